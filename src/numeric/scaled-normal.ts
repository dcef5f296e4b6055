import { computeNormalProbability } from "./special.ts";

/**
 * A normal quantity times an independent log-normal factor of median 1: X = (mean + sd z1) exp(logSd z2), z1 and z2
 * standard normal. X has the sign of the normal part: the factor spreads it and never turns it.
 */
export interface ScaledNormal {
  readonly mean: number;
  /** Standard deviation of the normal part, >= 0. */
  readonly sd: number;
  /** Standard deviation of the factor's logarithm, >= 0. */
  readonly logSd: number;
}

/** Integration over one standard normal by the trapezoidal rule, which for so smooth a function gains digits fast. */
const REACH = 8;
const STEP = 0.5;
const NODES: readonly { readonly z: number; readonly weight: number }[] = Array.from(
  { length: (2 * REACH) / STEP + 1 },
  (_, i) => {
    const z = -REACH + i * STEP;
    return { z, weight: (STEP * Math.exp((-z * z) / 2)) / Math.sqrt(2 * Math.PI) };
  },
);

/**
 * Chance that X <= x, from 0 to 1; a step where nothing spreads it. The part that is integrated numerically is the
 * narrower one, so that the other smooths what is left. Accuracy about 1e-9 (against the two-fold integral in the test).
 */
export function computeScaledNormalProbability({ mean, sd, logSd }: ScaledNormal, x: number): number {
  if (sd === 0 && logSd === 0) return x >= mean ? 1 : 0;
  if (logSd === 0) return computeNormalProbability((x - mean) / sd);
  if (sd === 0) {
    if (mean === 0) return x >= 0 ? 1 : 0;
    const within = x / mean > 0 ? computeNormalProbability(Math.log(x / mean) / logSd) : 0;
    return mean > 0 ? within : 1 - within;
  }
  if (sd > logSd * Math.abs(mean))
    return NODES.reduce(
      (sum, { z, weight }) => sum + weight * computeNormalProbability((x * Math.exp(-logSd * z) - mean) / sd),
      0,
    );
  return NODES.reduce((sum, { z, weight }) => {
    const normal = mean + sd * z;
    return sum + weight * computeScaledNormalProbability({ mean: normal, sd: 0, logSd }, x);
  }, 0);
}

/** The most steps to a quantile: far more than are needed, so that none is given back unfinished. */
const STEPS = 200;

/**
 * The x that X stays below with chance p, 0 < p < 1, to 1e-7 of its spread, by false position with the weight of an end
 * that stays halved (the Illinois rule).
 */
export function computeScaledNormalQuantile(of: ScaledNormal, p: number): number {
  const { mean, sd, logSd } = of;
  const spread = sd + logSd * Math.abs(mean);
  if (spread === 0) return mean;
  const miss = (x: number): number => computeScaledNormalProbability(of, x) - p;
  let [low, high] = [mean - spread, mean + spread];
  let [below, above] = [miss(low), miss(high)];
  for (let reach = spread; below > 0; reach *= 2)
    [low, below, high, above] = [low - reach, miss(low - reach), low, below];
  for (let reach = spread; above < 0; reach *= 2)
    [low, below, high, above] = [high, above, high + reach, miss(high + reach)];
  for (let step = 0, kept = 0; step < STEPS && high - low > 1e-7 * spread; step++) {
    const x = above === below ? (low + high) / 2 : low - (below * (high - low)) / (above - below);
    const value = miss(x);
    if (Math.abs(value) < 1e-11) return x;
    if (value < 0) {
      [low, below] = [x, value];
      if (kept < 0) above /= 2;
      kept = -1;
    } else {
      [high, above] = [x, value];
      if (kept > 0) below /= 2;
      kept = 1;
    }
  }
  return (low + high) / 2;
}
