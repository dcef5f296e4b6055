import type { ReactNode } from "react";

interface ChoiceProps {
  readonly chosen: boolean;
  readonly onChoose: () => void;
  readonly children: ReactNode;
}

/** One of several things to tap; the line under it and the filled ring say that it holds. */
export const Choice = ({ chosen, onChoose, children }: ChoiceProps) => (
  <button type="button" className="choice" aria-pressed={chosen} onClick={onChoose}>
    <span className="choice-ring" aria-hidden="true" />
    <span>{children}</span>
  </button>
);
