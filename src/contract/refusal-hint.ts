import { splitUnit } from "./wire-unit.ts";

const NUMBER_AND_UNIT = /^([-+]?\d+(?:[.,]\d+)?)\s*[a-zA-Z°%"'′″µ].*$/u;

/** What to do about a value of another kind than needed: "" where nothing can be said. */
export const hintType = (given: unknown, expected: string): string => {
  if (given === null) return "Leave the key out where there is nothing to say.";
  if ((expected !== "number" && expected !== "int") || typeof given !== "string") return "";
  const text = given.trim();
  if (text !== "" && Number.isFinite(Number(text))) return "Write the number without quotes.";
  if (/^-?\d+,\d+$/.test(text)) return "Write the number without quotes and with a decimal point.";
  return NUMBER_AND_UNIT.test(text) ? "Write the number alone, without quotes: its unit stands in the key." : "";
};

/** From this on a share was probably typed in percent (invented bound). */
const FEWEST_PERCENT = 5;

const keyOf = (path: readonly PropertyKey[]): string => String(path.findLast((step) => typeof step === "string") ?? "");

/** What to do about a number out of its range: "" where nothing can be said. */
export const hintRange = (given: unknown, bound: number, path: readonly PropertyKey[]): string => {
  if (typeof given !== "number") return "";
  const key = keyOf(path);
  const unit = splitUnit(key).unit;
  const isShare = bound === 1 || (unit?.dimension === "ratio" && bound < 1);
  if (isShare && given >= FEWEST_PERCENT && given <= 100) {
    return `A share runs from 0 to 1: ${given} % is ${Number((given / 100).toPrecision(12))}.`;
  }
  if (given < 0 && bound >= 0) return unit === null ? "" : "Is it the sign?";
  return given === 0 && bound === 0 && (key === "radial_n_per_mm" || key === "axial_n_per_mm")
    ? "An end that does not give is left out: it counts as rigid."
    : "";
};
