import type { ReactNode } from "react";
import { entrySummary } from "../model/entry-summary.ts";
import { newEntry } from "../model/field-form.ts";
import { findingsAt, findingsIn } from "../model/findings-of-sheet.ts";
import { entryLabel } from "../model/path-words.ts";
import { formatSheetPath, isAtOrIn, type SheetPath } from "../model/sheet-path.ts";
import { sheetValueAt, withEntry, withoutEntry } from "../model/sheet-value.ts";
import type { FormOf } from "./entry-props.ts";
import type { FieldsContext } from "./fields-context.ts";
import { FindingNote } from "./finding-note.tsx";
import { OpenRow } from "./open-row.tsx";

interface EntryListProps {
  readonly context: FieldsContext;
  readonly path: SheetPath;
  readonly form: FormOf<"list">;
  readonly title: string;
  /** The fields of the entry at a place. */
  readonly children: (place: SheetPath) => ReactNode;
}

/** A list of the sheet: one row an entry, the open one with its fields under it, one more at the end. */
export const EntryList = ({ context, path, form, title, children }: EntryListProps) => {
  const { editing, at, onSelect } = context;
  const value = sheetValueAt(editing.sheet, path);
  const entries: readonly unknown[] = Array.isArray(value) ? value : [];
  const rows = entries.map((entry, index) => {
    const place: SheetPath = [...path, index];
    const name = formatSheetPath(place);
    const open = at !== null && isAtOrIn(at, name);
    return (
      <OpenRow
        // biome-ignore lint/suspicious/noArrayIndexKey: a finding names an entry by its place in the list
        key={index}
        place={name}
        name={entryLabel(entry, index)}
        summary={entrySummary(entry)}
        wrong={findingsIn(editing.findings, place).length}
        open={open}
        onPress={() => onSelect(open ? formatSheetPath(path) : name)}
      >
        <FindingNote findings={findingsAt(editing.findings, place)} />
        {children(place)}
        <p className="entry-actions">
          <button
            type="button"
            className="link"
            onClick={() => {
              editing.change(withoutEntry(editing.sheet, path, index), null);
              onSelect(formatSheetPath(path));
            }}
          >
            Remove {entryLabel(entry, index)}
          </button>
        </p>
      </OpenRow>
    );
  });
  return (
    <div className="field-group">
      <div className="field-group-head">
        <h2>{title}</h2>
        {entries.length === 0 ? <span className="label">not on file</span> : null}
        <button
          type="button"
          className="link"
          onClick={() => {
            editing.change(withEntry(editing.sheet, path, newEntry(form.entry)), null);
            onSelect(formatSheetPath([...path, entries.length]));
          }}
        >
          Add one<span className="unseen">: {title}</span>
        </button>
      </div>
      {form.description === "" ? null : <p className="note">{form.description}</p>}
      <FindingNote findings={findingsAt(editing.findings, path)} />
      {rows}
    </div>
  );
};
