import { computeNormalQuantile, computeShares, type Estimate, type Limits } from "./normal.ts";

/** The only words there are for a guarded decision. */
export const decisions = ["within", "beyond", "too close to call"] as const;
export type Decision = (typeof decisions)[number];

export interface Conformity {
  /** Chance that the true value lies within the limits. */
  readonly probabilityWithin: number;
  /** Readings from here to there are decided "within"; null where that side has no limit. */
  readonly acceptFrom: number | null;
  readonly acceptTo: number | null;
  /** False: the limits lie so near together that no reading could be decided "within"; both ends are null. */
  readonly canAccept: boolean;
  readonly decision: Decision;
}

/** Chances are compared to this: a reading exactly on an end of the acceptance range is decided "within". */
const CHANCE_SLACK = 1e-12;

/** Smallest reading between two limits whose chance to be within reaches the confidence; null where none does. */
function findAcceptFrom(u: number, lower: number, upper: number, confidence: number): number | null {
  const chance = (value: number): number => computeShares({ value, u }, { lower, upper }).within;
  let high = (lower + upper) / 2;
  if (chance(high) < confidence) return null;
  let low = lower;
  for (let i = 0; i < 200; i++) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) break;
    if (chance(middle) < confidence) low = middle;
    else high = middle;
  }
  return high;
}

function computeAcceptance(u: number, { lower, upper }: Limits, confidence: number) {
  const guard = u * computeNormalQuantile(confidence);
  if (lower === null || upper === null)
    return {
      acceptFrom: lower === null ? null : lower + guard,
      acceptTo: upper === null ? null : upper - guard,
      canAccept: true,
    };
  if (u === 0) return { acceptFrom: lower, acceptTo: upper, canAccept: true };
  const acceptFrom = findAcceptFrom(u, lower, upper, confidence);
  return acceptFrom === null
    ? { acceptFrom: null, acceptTo: null, canAccept: false }
    : { acceptFrom, acceptTo: lower + (upper - acceptFrom), canAccept: true };
}

/**
 * Guarded decision of a reading against limits (at least one, lower below upper) at a confidence between a half and one:
 * "within" or "beyond" where the chance of it reaches the confidence, else "too close to call". With two limits the
 * acceptance range is where the chance of lying between both reaches it. Normal, nothing known beforehand (JCGM 106,
 * from memory).
 */
export function decideConformity(reading: Estimate, limits: Limits, confidence: number): Conformity {
  const { below, within, above } = computeShares(reading, limits);
  const decision =
    within >= confidence - CHANCE_SLACK
      ? "within"
      : below + above >= confidence - CHANCE_SLACK
        ? "beyond"
        : "too close to call";
  return { probabilityWithin: within, ...computeAcceptance(reading.u, limits, confidence), decision };
}
