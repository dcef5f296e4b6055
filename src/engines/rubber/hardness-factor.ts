import type { Share } from "#quantity";
import { computeShearModulus, HARDNESS_SCATTER } from "./shear-modulus.ts";

/** Two compounds of one hardness differ in modulus by as much (hardness-scatter in docs/sources.md). */
export const COMPOUND_SCATTER: Share = 0.3;

/** Standard deviations from the middle to either end of a range that holds 95 %. */
export const TO_95 = 1.959964;

/**
 * Standard deviation of one reading, Shore A: what two readings of one part differ by is taken as the 95 % of a difference
 * of two.
 */
export const HARDNESS_DEVIATION = HARDNESS_SCATTER / (TO_95 * Math.SQRT2);

/** Standard deviation of the logarithm of the ratio of moduli of two compounds that read alike. */
export const COMPOUND_LOG_DEVIATION = Math.log(1 + COMPOUND_SCATTER) / TO_95;

/** How many times the rates of a part are another's that differs from it in hardness alone. */
export interface HardnessFactor {
  readonly factor: number;
  /** Standard deviation of its logarithm. */
  readonly logSd: number;
  /** Where it lies with 95 %. */
  readonly low: number;
  readonly high: number;
}

/** Derivative of the logarithm of Gent's modulus by hardness, per point. */
const logSlope = (hardness: number): number => 7.62336 / (56 + 7.62336 * hardness) + 1 / (100 - hardness);

/**
 * The factor on every rate of a rubber part when its hardness goes from one figure to another (Shore A, both 20 to 80) at
 * the same dimensions: rates of bonded rubber are proportional to its shear modulus, so the factor is the ratio of moduli.
 * What is wrong with the relation as a whole drops out of the ratio; the two readings and the two compounds do not: they
 * are taken as independent, and spread the factor's logarithm (first order; docs/method/rubber.md).
 */
export function computeHardnessFactor(from: number, to: number): HardnessFactor {
  const factor = computeShearModulus(to) / computeShearModulus(from);
  const logSd = Math.hypot(
    HARDNESS_DEVIATION * logSlope(from),
    HARDNESS_DEVIATION * logSlope(to),
    COMPOUND_LOG_DEVIATION,
  );
  const spread = Math.exp(TO_95 * logSd);
  return { factor, logSd, low: factor / spread, high: factor * spread };
}
