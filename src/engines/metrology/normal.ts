import { computeNormalProbability } from "#numeric";

/** Abramowitz and Stegun 26.2.23, from memory: off by 4.5e-4 at most, a start that is refined below. */
function startQuantile(tail: number): number {
  const t = Math.sqrt(-2 * Math.log(tail));
  return t - (2.515517 + t * (0.802853 + t * 0.010328)) / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308)));
}

/**
 * Standard normal quantile for a probability p in (0, 1), to about 1e-15 relative; infinite at the ends, NaN outside.
 * Halley's iteration on the tail that is smaller.
 */
export function computeNormalQuantile(p: number): number {
  if (!(p >= 0 && p <= 1)) return Number.NaN;
  const tail = Math.min(p, 1 - p);
  if (tail === 0) return p === 0 ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY;
  if (tail === 0.5) return 0;
  let z = startQuantile(tail);
  for (let i = 0; i < 4; i++) {
    const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
    const step = (computeNormalProbability(-z) - tail) / density;
    z += step / (1 - (z * step) / 2);
  }
  return p < 0.5 ? -z : z;
}

/** A normal quantity: best estimate and standard uncertainty (not negative), in one unit. */
export interface Estimate {
  readonly value: number;
  readonly u: number;
}

/** Limits in the unit of the estimate; null where there is none. */
export interface Limits {
  readonly lower: number | null;
  readonly upper: number | null;
}

/** How far a limit lies from an estimate in multiples of u; without uncertainty before or behind it, on it counts as inside. */
function distance(limit: number, { value, u }: Estimate, on: -1 | 1): number {
  if (u > 0) return (limit - value) / u;
  return limit === value ? on * Number.POSITIVE_INFINITY : (limit - value) * Number.POSITIVE_INFINITY;
}

/** Chances that the true value lies below, within and above the limits; each tail keeps its own digits. */
export function computeShares(
  estimate: Estimate,
  { lower, upper }: Limits,
): {
  readonly below: number;
  readonly within: number;
  readonly above: number;
} {
  const low = lower === null ? Number.NEGATIVE_INFINITY : distance(lower, estimate, -1);
  const high = upper === null ? Number.POSITIVE_INFINITY : distance(upper, estimate, 1);
  const below = computeNormalProbability(low);
  const above = computeNormalProbability(-high);
  if (low > 0) return { below, within: computeNormalProbability(-low) - above, above };
  if (high < 0) return { below, within: computeNormalProbability(high) - below, above };
  return { below, within: 1 - below - above, above };
}
