import type { QuantityName } from "#vehicle";
import { readingUnits } from "../cases/reading-unit.ts";

/** Key of the least a limit allows: lower_mm, or lower where the quantity has no unit. */
export const lowerKey = (quantity: QuantityName): `lower${string}` => `lower${unitOf(quantity)}`;
/** Key of the most it allows. */
export const upperKey = (quantity: QuantityName): `upper${string}` => `upper${unitOf(quantity)}`;

function unitOf(quantity: QuantityName): string {
  const { suffix } = readingUnits[quantity];
  return suffix === "" ? "" : `_${suffix}`;
}

/** Grades of limits as a sheet writes them. */
export const gradeNames = { 1: "watch", 2: "plan", 3: "repair-first", 4: "do-not-drive" } as const;
