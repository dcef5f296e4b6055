import { findingsAt } from "../model/findings-of-sheet.ts";
import { sheetValueAt } from "../model/sheet-value.ts";
import { formatTyped } from "../model/typed-number.ts";
import { EntryFrame } from "./entry-frame.tsx";
import { type EntryProps, type FormOf, NOT_ON_FILE } from "./entry-props.ts";

/** Words of the sheet; an emptied field is not on file. */
export const TextEntry = ({ editing, path, form, label, unit }: EntryProps<FormOf<"text">>) => {
  const value = formatTyped(sheetValueAt(editing.sheet, path));
  const findings = findingsAt(editing.findings, path);
  const write = (text: string) => editing.edit(path, text === "" ? undefined : text);
  return (
    <EntryFrame label={label} unit={unit} description={form.description} findings={findings}>
      {({ id, note }) =>
        form.long ? (
          <textarea
            id={id}
            rows={4}
            value={value}
            placeholder={NOT_ON_FILE}
            aria-describedby={note}
            onChange={(event) => write(event.target.value)}
          />
        ) : (
          <input
            id={id}
            type="text"
            className="text-input"
            autoComplete="off"
            value={value}
            placeholder={NOT_ON_FILE}
            aria-invalid={findings.length > 0}
            aria-describedby={note}
            onChange={(event) => write(event.target.value)}
          />
        )
      }
    </EntryFrame>
  );
};
