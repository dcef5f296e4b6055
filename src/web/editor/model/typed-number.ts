import { type NumberBounds, parseTypedNumber } from "../../number/parse-typed-number.ts";

/**
 * What was typed into a field for a number, as the sheet holds it.
 * @returns undefined for nothing, the number, or the text itself where it is none or may be two, so that the checks say so
 */
export const typedValue = (text: string, bounds: NumberBounds = {}): number | string | undefined => {
  const typed = parseTypedNumber(text, bounds);
  if (typed.kind === "empty") return undefined;
  return typed.kind === "number" ? typed.value : text;
};

/** A value of a sheet as the text of a field; "" for nothing. */
export const formatTyped = (value: unknown): string =>
  value === undefined || value === null ? "" : typeof value === "object" ? JSON.stringify(value) : String(value);
