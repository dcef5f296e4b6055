import type { Condition } from "#casework";
import { metresFromMm, mmFromMetres } from "#quantity";
import { USUAL_CONDITION } from "./usual-condition.ts";

/** Forces, travel and rack as they stand in an address, so that every sheet of a car line asks under the same ones. */
export interface ConditionSearch {
  readonly rise_mm?: number;
  readonly rack_mm?: number;
  readonly braking_n?: number;
  readonly lateral_n?: number;
  readonly drive_n?: number;
}

const CONDITION_KEYS = ["rise_mm", "rack_mm", "braking_n", "lateral_n", "drive_n"] as const;

/** Reads the condition of an address; what is no number is left out. */
export const readConditionSearch = (search: Record<string, unknown>): ConditionSearch =>
  Object.fromEntries(
    CONDITION_KEYS.flatMap((key) => {
      const value = search[key];
      const number = typeof value === "string" && value.trim() !== "" ? Number(value) : value;
      return typeof number === "number" && Number.isFinite(number) ? [[key, number] as const] : [];
    }),
  );

/** The condition an address asks for; what it does not name is as usual. */
export const conditionOf = (search: ConditionSearch): Condition => ({
  contactRise: search.rise_mm === undefined ? USUAL_CONDITION.contactRise : metresFromMm(search.rise_mm),
  rack: search.rack_mm === undefined ? USUAL_CONDITION.rack : metresFromMm(search.rack_mm),
  braking: search.braking_n ?? USUAL_CONDITION.braking,
  lateral: search.lateral_n ?? USUAL_CONDITION.lateral,
  drive: search.drive_n ?? USUAL_CONDITION.drive,
});

/** A condition as it stands in an address. */
export const searchOfCondition = (condition: Condition): Required<ConditionSearch> => ({
  rise_mm: Math.round(mmFromMetres(condition.contactRise)),
  rack_mm: Math.round(mmFromMetres(condition.rack)),
  braking_n: Math.round(condition.braking),
  lateral_n: Math.round(condition.lateral),
  drive_n: Math.round(condition.drive),
});
