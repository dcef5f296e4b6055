import type { ReactNode } from "react";

interface OpenRowProps {
  /** The place of the sheet it stands for, as findings write it. */
  readonly place: string;
  readonly name: string;
  readonly summary: string;
  /** How many things are to put right in it. */
  readonly wrong: number;
  readonly open: boolean;
  readonly onPress: () => void;
  readonly children: ReactNode;
}

/** One row of a list that opens in place. */
export const OpenRow = ({ place, name, summary, wrong, open, onPress, children }: OpenRowProps) => (
  <div className="open-row" data-place={place} data-open={open}>
    <button type="button" className="open-row-head" aria-expanded={open} onClick={onPress}>
      <span className="open-row-name">{name}</span>
      <span className="label">{summary}</span>
      {wrong === 0 ? null : (
        <span className="to-put-right">{wrong === 1 ? "1 to put right" : `${wrong} to put right`}</span>
      )}
    </button>
    {open ? <div className="open-row-body">{children}</div> : null}
  </div>
);
