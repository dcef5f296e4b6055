import type { Finding } from "#numeric";
import { describeUnit } from "./refusal-words.ts";
import { formatPath } from "./wire-path.ts";

/** No figure of a car in any unit used here comes near it; larger ones are slips and would drown the arithmetic (invented bound). */
export const largestNumber = 1e9;

/** Findings for every number in a document that is not finite or is larger than any figure of a car; at most `limit`. */
export const checkNumbers = (document: unknown, limit: number): readonly Finding[] => {
  const findings: Finding[] = [];
  const path: PropertyKey[] = [];
  const look = (value: unknown): void => {
    if (findings.length >= limit) return;
    if (typeof value === "number") {
      if (Math.abs(value) <= largestNumber) return;
      const tooLarge = !Number.isNaN(value) && Number.isFinite(value);
      findings.push({
        code: tooLarge ? "number-too-large" : "not-a-number",
        path: formatPath(path),
        got: String(value),
        needed: `${tooLarge ? `a number no larger than ${largestNumber}` : "a finite number"}${describeUnit(path)}`,
        hint: tooLarge ? "Check the unit in the key." : "Leave the key out where the figure is not known.",
      });
    } else if (Array.isArray(value)) {
      value.forEach((one, index) => {
        path.push(index);
        look(one);
        path.pop();
      });
    } else if (typeof value === "object" && value !== null) {
      for (const [key, one] of Object.entries(value)) {
        path.push(key);
        look(one);
        path.pop();
      }
    }
  };
  look(document);
  return findings;
};
