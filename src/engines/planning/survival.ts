import { computeErfc } from "#numeric";
import type { Life } from "./instance.ts";

/** Below this erfc(z) has no meaning left in double precision, so its logarithm is taken from the continued fraction. */
const FAR = 20;

/** ln erfc(z); by the continued fraction (Abramowitz and Stegun 7.1.14, from memory) where erfc itself underflows. */
function computeLogErfc(z: number): number {
  if (z < FAR) return Math.log(computeErfc(z));
  let f = z;
  for (let k = 60; k >= 1; k--) f = z + k / 2 / f;
  return -z * z - Math.log(f * Math.sqrt(Math.PI));
}

/** ln of the chance that a unit is still sound at this age; 0 for ages up to nought. */
export function computeLogSurvival(life: Life, age: number): number {
  if (age <= 0) return 0;
  if (life.family === "weibull") return -((age / life.scale) ** life.shape);
  return computeLogErfc(Math.log(age / life.median) / (life.sigma * Math.SQRT2)) - Math.LN2;
}

/** Chance that a unit that is sound at age `from` fails before age `to` (0 to 1). */
export function computeFailureProbability(life: Life, from: number, to: number): number {
  if (to <= from) return 0;
  return -Math.expm1(computeLogSurvival(life, to) - computeLogSurvival(life, from));
}

/** Age at which half the units have failed. */
export function computeMedianLife(life: Life): number {
  return life.family === "lognormal" ? life.median : life.scale * Math.LN2 ** (1 / life.shape);
}
