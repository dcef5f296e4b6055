import { formatKm, formatNumber } from "#casework";
import type { DistanceUnit } from "./odometer.ts";

const KM_PER_MILE = 1.609_344;

/** Kilometres in one unit of distance. */
export const kmPer = (unit: DistanceUnit): number => (unit === "km" ? 1 : KM_PER_MILE);

/** A distance in the unit of its car: "128 440 km", "79 810 mi". */
export const formatDistance = (km: number, unit: DistanceUnit): string =>
  unit === "km" ? formatKm(km) : `${formatNumber(km / KM_PER_MILE, 0).replace(/\B(?=(\d{3})+$)/g, "\u00a0")} mi`;
