import type { DocumentBodies } from "#casework";
import { parseTypedQuantity } from "../../number/parse-typed-quantity.ts";

const KM_PER_MILE = 1.609_344;
/** Further than any odometer goes, km. */
export const FURTHEST_KM = 3_000_000;

export type DistanceUnit = DocumentBodies["car"]["distanceUnit"];

/** A whole figure as typed, thousands set off or not, with or without its unit; null for an empty text, undefined where it is no distance. */
export const parseOdometer = (text: string, unit: DistanceUnit): number | null | undefined => {
  const read = parseTypedQuantity(text, unit, { low: 0, high: FURTHEST_KM, whole: true });
  if (read.kind === "empty") return null;
  if (read.kind !== "number" || read.value < 0) return undefined;
  const km = unit === "km" ? read.value : read.value * KM_PER_MILE;
  return km <= FURTHEST_KM ? km : undefined;
};

/** An odometer as it is typed, in the unit of its car; "" where it was not read. */
export const odometerText = (km: number | null, unit: DistanceUnit): string =>
  km === null ? "" : String(Math.round(unit === "km" ? km : km / KM_PER_MILE));

/** What an odometer takes, in words: "a whole number of km, 0 to 3 000 000". */
export const odometerNeeds = (unit: DistanceUnit): string => {
  const most = Math.floor(unit === "km" ? FURTHEST_KM : FURTHEST_KM / KM_PER_MILE);
  return `a whole number of ${unit}, 0 to ${String(most).replace(/\B(?=(\d{3})+$)/g, "\u202f")}`;
};

/** What was typed as km, taken for miles, km. */
export const asMiles = (km: number): number => km * KM_PER_MILE;

/**
 * What to add to readings of a replaced odometer so that the car has run at least as far as at its last visit, km.
 * @param last what the odometer showed then
 */
export const offsetAfter = (last: number, now: number): number => Math.max(0, last - now);
