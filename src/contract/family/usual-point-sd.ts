import { mmFromMetres } from "#quantity";
import { type Origin, usualPointDeviation } from "#vehicle";

const isOrigin = (word: unknown): word is Origin => typeof word === "string" && word in usualPointDeviation;

/**
 * Standard deviation along x, y, z in mm of a hard point that gives none, as a file is read: that of its own origin, else
 * the axle's, else what is usual for the axle's origin; null where the words of the file are none of an origin.
 */
export function usualPointSdMm(
  own: unknown,
  defaults: { readonly origin?: unknown; readonly sd_mm?: unknown },
): readonly unknown[] | null {
  if (own === undefined && Array.isArray(defaults.sd_mm)) return defaults.sd_mm;
  const origin = own ?? defaults.origin ?? "guess";
  return isOrigin(origin) ? usualPointDeviation[origin].map((sd) => Number(mmFromMetres(sd).toFixed(6))) : null;
}
