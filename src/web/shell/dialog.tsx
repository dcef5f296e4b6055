import { type ReactNode, useEffect, useId, useRef } from "react";

interface DialogProps {
  readonly title: string;
  readonly onClose: () => void;
  readonly children: ReactNode;
}

/** A sheet laid over the sheet: holds the focus, closes by Escape, by its button or by a tap beside it. */
export const Dialog = ({ title, onClose, children }: DialogProps) => {
  const element = useRef<HTMLDialogElement>(null);
  const heading = useId();
  useEffect(() => {
    element.current?.showModal();
  }, []);
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: a modal dialog closes by Escape of itself; the click serves the pointer beside it
    <dialog
      ref={element}
      className="dialog"
      aria-labelledby={heading}
      onClose={onClose}
      onClick={(event) => {
        if (event.target === element.current) element.current?.close();
      }}
    >
      <div className="dialog-body">
        <div className="dialog-head">
          <h2 id={heading} className="heading">
            {title}
          </h2>
          <button type="button" className="link" onClick={() => element.current?.close()}>
            Close
          </button>
        </div>
        {children}
      </div>
    </dialog>
  );
};
