import { type ReactNode, useId, useState } from "react";

/** Explains what is selected: at the right of the sheet, or slid up from below on an upright tablet. */
export const Margin = ({ children }: { readonly children: ReactNode }) => {
  const [open, setOpen] = useState(true);
  const body = useId();
  return (
    <aside className="margin" data-open={open} aria-label="Margin">
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
