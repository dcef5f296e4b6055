import type { ReactNode } from "react";
import { findingsAt } from "../model/findings-of-sheet.ts";
import type { SheetPath } from "../model/sheet-path.ts";
import { sheetValueAt } from "../model/sheet-value.ts";
import type { Editing } from "../use-editing.ts";
import { NOT_ON_FILE } from "./entry-props.ts";
import { FindingNote } from "./finding-note.tsx";

interface PutOnFileProps {
  readonly editing: Editing;
  readonly path: SheetPath;
  readonly title: string;
  readonly description: string;
  /** It must be there, so it cannot be taken off file. */
  readonly required: boolean;
  readonly children: ReactNode;
}

/** Fields that belong together; where none of them is on file, the way to put them there. */
export const PutOnFile = ({ editing, path, title, description, required, children }: PutOnFileProps) => {
  const there = sheetValueAt(editing.sheet, path) !== undefined;
  return (
    <div className="field-group">
      <div className="field-group-head">
        <h2>{title}</h2>
        {there ? null : <span className="label">{NOT_ON_FILE}</span>}
        {there && required ? null : (
          <button type="button" className="link" onClick={() => editing.edit(path, there ? undefined : {})}>
            {there ? "Take off file" : "Put on file"}
            <span className="unseen">: {title}</span>
          </button>
        )}
      </div>
      {description === "" ? null : <p className="note">{description}</p>}
      <FindingNote findings={findingsAt(editing.findings, path)} />
      {there ? children : null}
    </div>
  );
};
