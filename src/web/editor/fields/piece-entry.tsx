import { useState } from "react";
import type { FieldForm } from "../model/field-form.ts";
import { findingsIn } from "../model/findings-of-sheet.ts";
import { isSameValue, sheetValueAt } from "../model/sheet-value.ts";
import { EntryFrame } from "./entry-frame.tsx";
import { type EntryProps, NOT_ON_FILE } from "./entry-props.ts";

/** A piece of the file as JSON; text that is none yet stays text, so that the checks say so. */
const parsePiece = (text: string): unknown => {
  if (text.trim() === "") return undefined;
  try {
    return JSON.parse(text);
  } catch (cause) {
    if (cause instanceof SyntaxError) return text;
    throw cause;
  }
};

const formatPiece = (value: unknown): string => {
  if (value === undefined) return "";
  if (typeof value === "string") return value;
  if (!Array.isArray(value)) return JSON.stringify(value);
  return `[\n${value.map((entry) => `  ${JSON.stringify(entry)}`).join(",\n")}\n]`;
};

/** What no form of its own is made for: its piece of the file, with what the checks find in it. */
export const PieceEntry = ({ editing, path, form, label, unit }: EntryProps<FieldForm>) => {
  const value = sheetValueAt(editing.sheet, path);
  const [text, setText] = useState(formatPiece(value));
  const shown = isSameValue(parsePiece(text), value) ? text : formatPiece(value);
  return (
    <EntryFrame
      label={label}
      unit={unit}
      description={`${form.description} As its piece of the file.`}
      findings={findingsIn(editing.findings, path)}
    >
      {({ id, note }) => (
        <textarea
          id={id}
          className="piece"
          rows={6}
          spellCheck={false}
          value={shown}
          placeholder={NOT_ON_FILE}
          aria-describedby={note}
          onChange={(event) => {
            setText(event.target.value);
            editing.edit(path, parsePiece(event.target.value));
          }}
        />
      )}
    </EntryFrame>
  );
};
