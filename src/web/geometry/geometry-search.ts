import type { Condition } from "#casework";
import { metresFromMm, mmFromMetres } from "#quantity";
import { USUAL_CONDITION } from "../effect/usual-condition.ts";
import { readUndersideSearch, type UndersideSearch } from "../underside/underside-search.ts";

/** What of a geometry sheet stands in its address: the marks of the underside, the place, and the condition. */
export interface GeometrySearch extends UndersideSearch {
  readonly rise_mm?: number;
  readonly rack_mm?: number;
  readonly braking_n?: number;
  readonly lateral_n?: number;
  readonly drive_n?: number;
}

const CONDITION_KEYS = ["rise_mm", "rack_mm", "braking_n", "lateral_n", "drive_n"] as const;

/** Reads the search part of an address; what is no number is left out. */
export const readGeometrySearch = (search: Record<string, unknown>): GeometrySearch => {
  const numbers = CONDITION_KEYS.flatMap((key) => {
    const value = search[key];
    const number = typeof value === "string" && value.trim() !== "" ? Number(value) : value;
    return typeof number === "number" && Number.isFinite(number) ? [[key, number] as const] : [];
  });
  return { ...readUndersideSearch(search), ...Object.fromEntries(numbers) };
};

/** The condition an address asks for; what it does not name is as usual. */
export const conditionOf = (search: GeometrySearch): Condition => ({
  contactRise: search.rise_mm === undefined ? USUAL_CONDITION.contactRise : metresFromMm(search.rise_mm),
  rack: search.rack_mm === undefined ? USUAL_CONDITION.rack : metresFromMm(search.rack_mm),
  braking: search.braking_n ?? USUAL_CONDITION.braking,
  lateral: search.lateral_n ?? USUAL_CONDITION.lateral,
  drive: search.drive_n ?? USUAL_CONDITION.drive,
});

/** A condition as it stands in an address. */
export const searchOfCondition = (condition: Condition): Required<Omit<GeometrySearch, "marks" | "at">> => ({
  rise_mm: Math.round(mmFromMetres(condition.contactRise)),
  rack_mm: Math.round(mmFromMetres(condition.rack)),
  braking_n: Math.round(condition.braking),
  lateral_n: Math.round(condition.lateral),
  drive_n: Math.round(condition.drive),
});
