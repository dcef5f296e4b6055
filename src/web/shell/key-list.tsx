import { Dialog } from "./dialog.tsx";
import type { PageKey } from "./page-keys.ts";

interface KeyListProps {
  readonly keys: readonly Pick<PageKey, "key" | "does">[];
  readonly onClose: () => void;
}

const ALWAYS = [
  { key: "Tab", does: "next thing that can be pressed" },
  { key: "Enter", does: "press it" },
  { key: "Esc", does: "close what is open" },
];

/** The keys of the page, opened with "?". */
export const KeyList = ({ keys, onClose }: KeyListProps) => (
  <Dialog title="Keys of this page" onClose={onClose}>
    <dl className="key-list">
      {[...keys, ...ALWAYS].map(({ key, does }) => (
        <div key={key} className="key-row">
          <dt>
            <kbd>{key}</kbd>
          </dt>
          <dd>{does}</dd>
        </div>
      ))}
    </dl>
  </Dialog>
);
