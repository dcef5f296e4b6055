import type { NumberBounds } from "../../number/parse-typed-number.ts";
import { parseTypedQuantity } from "../../number/parse-typed-quantity.ts";

/** Digits kept of a figure that came in another unit: 7.4 in is 187.96 mm. */
const DIGITS = 6;

/**
 * What was typed into a field for a number, as the sheet holds it; a unit may stand behind it.
 * @param unit of the field, as it stands behind it; "" for none
 * @returns undefined for nothing, the number, or the text itself where it is none or may be two, so that the checks say so
 */
export const typedValue = (text: string, bounds: NumberBounds = {}, unit = ""): number | string | undefined => {
  const typed = parseTypedQuantity(text, unit, bounds);
  if (typed.kind === "empty") return undefined;
  if (typed.kind !== "number") return text;
  return typed.as === null ? typed.value : Number(typed.value.toFixed(DIGITS));
};

/** A value of a sheet as the text of a field; "" for nothing. */
export const formatTyped = (value: unknown): string =>
  value === undefined || value === null ? "" : typeof value === "object" ? JSON.stringify(value) : String(value);
