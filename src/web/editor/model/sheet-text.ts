import type { Draft } from "./draft.ts";
import { isChanged } from "./draft.ts";
import { isKeyed } from "./sheet-value.ts";

const INDENT = "  ";
/** A list of bare figures stays on one line up to here, as a person writes coordinates. */
const LINE = 120;

const isBare = (value: unknown): boolean => !Array.isArray(value) && !isKeyed(value);
const isFlat = (value: unknown): boolean => Array.isArray(value) && value.every(isBare);

const onOneLine = (value: unknown): string =>
  Array.isArray(value) ? `[${value.map(onOneLine).join(", ")}]` : JSON.stringify(value);

const written = (value: unknown, indent: string): string => {
  const inner = indent + INDENT;
  if (Array.isArray(value)) {
    if (value.every((entry) => isBare(entry) || isFlat(entry))) {
      const line = onOneLine(value);
      if (indent.length + line.length <= LINE) return line;
    }
    return `[\n${value.map((entry) => inner + written(entry, inner)).join(",\n")}\n${indent}]`;
  }
  if (!isKeyed(value)) return JSON.stringify(value);
  const lines = Object.entries(value).map(([key, entry]) => `${inner}${JSON.stringify(key)}: ${written(entry, inner)}`);
  return lines.length === 0 ? "{}" : `{\n${lines.join(",\n")}\n${indent}}`;
};

/** A sheet as the text of its file: one key a line, coordinates together. */
export const formatSheetText = (sheet: unknown): string => `${written(sheet, "")}\n`;

/** The text to keep: where nothing was changed the very letters the draft was begun from. */
export const textOfDraft = (draft: Draft): string =>
  isChanged(draft) ? formatSheetText(draft.sheet) : draft.base.text;
