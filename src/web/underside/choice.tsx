import type { ReactNode } from "react";

interface ChoiceProps {
  readonly chosen: boolean;
  readonly onChoose: () => void;
  /** What it looks like or stands for, under it. */
  readonly note?: string;
  /** Takes the whole width, for a note of several lines. */
  readonly wide?: boolean;
  readonly children: ReactNode;
}

/** One of several things to tap; the line under it and the filled ring say that it holds. */
export const Choice = ({ chosen, onChoose, note, wide = false, children }: ChoiceProps) => (
  <button type="button" className={wide ? "choice choice-wide" : "choice"} aria-pressed={chosen} onClick={onChoose}>
    <span className="choice-ring" aria-hidden="true" />
    <span className="choice-words">
      <span>{children}</span>
      {note === undefined ? null : <span className="note">{note}</span>}
    </span>
  </button>
);
