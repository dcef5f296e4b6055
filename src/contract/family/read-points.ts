import type { z } from "zod";
import { metresFromMm, newtonSecondsPerMetreFromPerMm, newtonsPerMetreFromPerMm, type PointIn } from "#quantity";
import {
  type FluidFill,
  type HardPoint,
  type Origin,
  type TornShare,
  usualPointDeviation,
  usualRateDeviation,
} from "#vehicle";
import type { DefaultsSheet } from "./axle-schema.ts";
import type { fluidFill, hardPoint, tornShare } from "./joint-schema.ts";

/** What the points and rubber of one axle take where they say nothing themselves. */
export interface AxleDefaults {
  readonly origin: Origin;
  readonly sd: HardPoint["sd"] | null;
  readonly rateOrigin: Origin;
  readonly rateSdShare: number | null;
  readonly tornShare: TornShares;
}

export type TornShares = Readonly<Partial<Record<1 | 2 | 3, TornShare>>>;
type Triple = readonly [number, number, number];

/** Words of the file for the grades whose torn share can be given, and the grades. */
export const tornGrades = [
  ["watch", 1],
  ["plan", 2],
  ["repair_first", 3],
] as const;

export function readDefaults(sheet: DefaultsSheet | undefined): AxleDefaults {
  return {
    origin: sheet?.origin ?? "guess",
    sd: sheet?.sd_mm ? readPlace(sheet.sd_mm) : null,
    rateOrigin: sheet?.rate_origin ?? "guess",
    rateSdShare: sheet?.rate_sd_share ?? null,
    tornShare: readTornShare(sheet?.torn_share ?? {}, sheet?.rate_origin ?? "guess"),
  };
}

export function readPlace(mm: Triple): PointIn<"vehicle"> {
  return [metresFromMm(mm[0]), metresFromMm(mm[1]), metresFromMm(mm[2])];
}

export function readPoint(sheet: z.infer<typeof hardPoint>, defaults: AxleDefaults): HardPoint {
  const given = Array.isArray(sheet) ? { at_mm: sheet } : sheet;
  const origin = given.origin ?? defaults.origin;
  const ownDefault = given.origin === undefined ? defaults.sd : null;
  return {
    at: readPlace(given.at_mm),
    sd: given.sd_mm ? readPlace(given.sd_mm) : (ownDefault ?? usualPointDeviation[origin]),
    origin,
  };
}

export function readRate(
  sheet: { rate_sd_share?: number | undefined; rate_origin?: Origin | undefined },
  defaults: AxleDefaults,
) {
  const rateOrigin = sheet.rate_origin ?? defaults.rateOrigin;
  const ownDefault = sheet.rate_origin === undefined ? defaults.rateSdShare : null;
  return { rateOrigin, rateSdShare: sheet.rate_sd_share ?? ownDefault ?? usualRateDeviation[rateOrigin] };
}

export function readFluid(sheet: z.infer<typeof fluidFill>, defaultOrigin: Origin): FluidFill {
  const origin = sheet.origin ?? defaultOrigin;
  return {
    volume: newtonsPerMetreFromPerMm(sheet.volume_n_per_mm),
    inertia: sheet.inertia_kg,
    damping: newtonSecondsPerMetreFromPerMm(sheet.damping_n_s_per_mm),
    lossFactor: sheet.loss_factor,
    sdShare: sheet.sd_share ?? usualRateDeviation[origin],
    origin,
  };
}

export function readTornShare(sheet: z.infer<typeof tornShare>, defaultOrigin: Origin): TornShares {
  const shares: Partial<Record<1 | 2 | 3, TornShare>> = {};
  for (const [word, grade] of tornGrades) {
    const range = sheet[word];
    if (!range) continue;
    shares[grade] = Array.isArray(range)
      ? { low: range[0], high: range[1], origin: defaultOrigin }
      : { low: range.low_share, high: range.high_share, origin: range.origin ?? defaultOrigin };
  }
  return shares;
}
