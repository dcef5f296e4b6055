import { useState } from "react";
import { findingsIn } from "../model/findings-of-sheet.ts";
import { isSameValue, sheetValueAt } from "../model/sheet-value.ts";
import { formatTyped } from "../model/typed-number.ts";
import { EntryFrame } from "./entry-frame.tsx";
import { type EntryProps, type FormOf, NOT_ON_FILE } from "./entry-props.ts";

/** Words or whole numbers with commas between them. */
const parseWords = (text: string, numeric: boolean): unknown => {
  const words = text
    .split(",")
    .map((word) => word.trim())
    .filter((word) => word !== "");
  if (words.length === 0) return undefined;
  return numeric ? words.map((word) => (/^-?\d+$/.test(word) ? Number(word) : word)) : words;
};

/** A list of words or numbers in one line. */
export const WordsEntry = ({ editing, path, form, label, unit }: EntryProps<FormOf<"words">>) => {
  const value = sheetValueAt(editing.sheet, path);
  const stands = Array.isArray(value) ? value.map(formatTyped).join(", ") : formatTyped(value);
  const [text, setText] = useState(stands);
  const shown = isSameValue(parseWords(text, form.numeric), value) ? text : stands;
  return (
    <EntryFrame
      label={label}
      unit={unit}
      description={`${form.description} With commas between them.`}
      findings={findingsIn(editing.findings, path)}
    >
      {({ id, note }) => (
        <input
          id={id}
          type="text"
          className="text-input"
          autoComplete="off"
          value={shown}
          placeholder={NOT_ON_FILE}
          aria-describedby={note}
          onChange={(event) => {
            setText(event.target.value);
            editing.edit(path, parseWords(event.target.value, form.numeric));
          }}
        />
      )}
    </EntryFrame>
  );
};
