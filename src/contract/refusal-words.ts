import { splitUnit } from "./wire-unit.ts";

const longestShown = 60;

/** What came, in words: numbers and short text as they are, lists and objects by their size. */
export const describeValue = (value: unknown): string => {
  if (value === undefined) return "nothing";
  if (value === null) return "null";
  if (typeof value === "number" || typeof value === "boolean") return String(value);
  if (typeof value === "string") {
    return value.length > longestShown ? `${JSON.stringify(value.slice(0, longestShown))}…` : JSON.stringify(value);
  }
  if (Array.isArray(value)) return value.length === 0 ? "an empty list" : `a list of ${value.length}`;
  if (typeof value !== "object") return `a ${typeof value}`;
  const keys = Object.keys(value);
  if (keys.length === 0) return "an empty object";
  const named = keys.slice(0, 4).map((key) => key.slice(0, 24));
  return `an object with ${named.join(", ")}${keys.length > named.length ? ` and ${keys.length - named.length} more` : ""}`;
};

const kinds: Readonly<Record<string, string>> = {
  string: "text in double quotes",
  number: "a number",
  int: "a whole number",
  boolean: "true or false",
  object: "an object in { }",
  record: "an object in { }",
  array: "a list in [ ]",
  tuple: "a list in [ ]",
  null: "null",
  undefined: "nothing",
  never: "nothing",
};

/** Name of a kind of value in words: "a number", "a list in [ ]". */
export const describeKind = (kind: string): string => kinds[kind] ?? `a ${kind}`;

/** ", in millimetres" for a key that ends in a unit (the nearest key above where the value sits in a list); else "". */
export const describeUnit = (path: readonly PropertyKey[]): string => {
  const key = path.findLast((step) => typeof step === "string");
  const unit = key === undefined ? null : splitUnit(String(key)).unit;
  return unit === null ? "" : unit.dimension === "ratio" ? ` (${unit.words})` : `, in ${unit.words}`;
};
