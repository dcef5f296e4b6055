import { type ReactNode, useEffect, useId, useState } from "react";

interface MarginProps {
  /** What the margin is about; on an upright tablet it slides up when this changes to something. */
  readonly subject: string | null;
  /** How much of it stays in view when it is slid down, px; absent: its first line and heading. */
  readonly low: number | undefined;
  readonly children: ReactNode;
}

/** Explains what is selected: at the right of the sheet, or slid up from below on an upright tablet. */
export const Margin = ({ subject, low, children }: MarginProps) => {
  const [open, setOpen] = useState(subject !== null);
  const body = useId();
  useEffect(() => setOpen(subject !== null), [subject]);
  return (
    <aside
      className="margin"
      data-open={open}
      aria-label="Margin"
      ref={(element) => element?.style.setProperty("--margin-low", low === undefined ? null : `${low}px`)}
    >
      <button
        type="button"
        className="margin-handle"
        aria-expanded={open}
        aria-controls={body}
        onClick={() => setOpen(!open)}
      >
        <span className="margin-grip" aria-hidden="true" />
        <span className="unseen">{open ? "Slide the margin down" : "Slide the margin up"}</span>
      </button>
      <div id={body} className="margin-body">
        {children}
      </div>
    </aside>
  );
};
