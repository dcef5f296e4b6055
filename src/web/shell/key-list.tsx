import { type KeyboardEvent, useEffect, useRef } from "react";
import { Dialog } from "./dialog.tsx";
import type { PageKey } from "./page-keys.ts";

/** A key that holds where the focus is, in words; nothing runs from the list. */
export interface FieldKey {
  readonly key: string;
  readonly does: string;
}

interface KeyListProps {
  readonly keys: readonly PageKey[];
  readonly fieldKeys: readonly FieldKey[];
  readonly onClose: () => void;
}

const ALWAYS: readonly FieldKey[] = [
  { key: "?", does: "this list" },
  { key: "Tab", does: "next thing that can be pressed" },
  { key: "Enter", does: "press it" },
  { key: "Esc", does: "close what is open" },
];

/** Where an arrow, Home or End leads in a list of so many; null for any other key. */
const nextIn = (count: number, now: number, key: string): number | null => {
  switch (key) {
    case "ArrowDown":
      return (now + 1) % count;
    case "ArrowUp":
      return (now - 1 + count) % count;
    case "Home":
      return 0;
    case "End":
      return count - 1;
    default:
      return null;
  }
};

/** The keys of the page, opened with "?": arrows move through them, and each does what it says when it is pressed here. */
export const KeyList = ({ keys, fieldKeys, onClose }: KeyListProps) => {
  const list = useRef<HTMLUListElement>(null);
  useEffect(() => list.current?.querySelector("button")?.focus(), []);
  const onKeyDown = (event: KeyboardEvent) => {
    const rows = [...(list.current?.querySelectorAll<HTMLElement>("button") ?? [])];
    const now = rows.findIndex((row) => row.matches(":focus"));
    const next = rows.length === 0 ? null : nextIn(rows.length, now, event.key);
    if (next === null) return;
    event.preventDefault();
    rows[next]?.focus();
  };
  return (
    <Dialog title="Keys of this page" onClose={onClose}>
      {keys.length === 0 ? null : (
        <ul ref={list} className="key-list" onKeyDown={onKeyDown}>
          {keys.map(({ key, does, run }) => (
            <li key={key}>
              <button
                type="button"
                className="key-row"
                onClick={(event) => {
                  event.currentTarget.closest("dialog")?.close();
                  run();
                }}
              >
                <kbd>{key}</kbd>
                <span>{does}</span>
              </button>
            </li>
          ))}
        </ul>
      )}
      <dl className="key-list">
        {[...fieldKeys, ...ALWAYS].map(({ key, does }) => (
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
};
