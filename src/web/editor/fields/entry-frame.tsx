import { type ReactNode, useId } from "react";
import type { Finding } from "#contract";
import { FindingNote } from "./finding-note.tsx";

/** Says an input what it is called and what is said under it. */
export interface FrameIds {
  readonly id: string;
  readonly note: string;
}

interface EntryFrameProps {
  readonly label: string;
  readonly unit?: string;
  readonly description: string;
  readonly findings: readonly Finding[];
  /** Several inputs under one label, each with a name of its own. */
  readonly several?: boolean;
  readonly children: (ids: FrameIds) => ReactNode;
}

/** One entry of the sheet: its label, its input, and under it what it means or what is wrong with it. */
export const EntryFrame = ({ label, unit = "", description, findings, several = false, children }: EntryFrameProps) => {
  const id = useId();
  const note = useId();
  const wrong = findings.length > 0;
  return (
    <div className="field sheet-field" data-wrong={wrong}>
      {several ? (
        <span id={id} className="field-label">
          {label}
        </span>
      ) : (
        <label htmlFor={id}>{label}</label>
      )}
      <span className="field-entry" {...(several ? { role: "group", "aria-labelledby": id } : {})}>
        {children({ id, note })}
        {unit === "" ? null : <span className="field-unit">{unit}</span>}
      </span>
      {wrong ? (
        <FindingNote id={note} findings={findings} />
      ) : (
        <span id={note} className="note">
          {description}
        </span>
      )}
    </div>
  );
};
