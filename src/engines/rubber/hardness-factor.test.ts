import { describe, expect, it } from "vitest";
import { normalFrom, seededRandom } from "#numeric";
import { COMPOUND_LOG_DEVIATION, computeHardnessFactor, HARDNESS_DEVIATION } from "./hardness-factor.ts";
import { computeShearModulus } from "./shear-modulus.ts";

const DRAWS = 40_000;

/** Where the factor lies with 95 % by drawing both readings and the two compounds. */
function sampleFactor(from: number, to: number): readonly [low: number, high: number] {
  const draw = normalFrom(seededRandom(5));
  const read = (hardness: number): number => computeShearModulus(hardness + HARDNESS_DEVIATION * draw());
  const factors = Array.from(
    { length: DRAWS },
    () => (read(to) / read(from)) * Math.exp(COMPOUND_LOG_DEVIATION * draw()),
  ).toSorted((a, b) => a - b);
  return [factors[0.025 * DRAWS] as number, factors[0.975 * DRAWS] as number];
}

describe("the factor on the rates of a harder part", () => {
  it.each([
    [55, 65],
    [60, 65],
    [40, 70],
    [20, 30],
    [75, 80],
  ])("%i to %i Shore A lies where drawn readings and compounds put it", (from, to) => {
    const { low, high } = computeHardnessFactor(from, to);
    const [drawnLow, drawnHigh] = sampleFactor(from, to);
    expect(low / drawnLow).toBeCloseTo(1, 1.5);
    expect(high / drawnHigh).toBeCloseTo(1, 1.5);
  });

  it("is the ratio of the two moduli, in the middle of its range", () => {
    const { factor, low, high } = computeHardnessFactor(55, 65);
    expect(factor).toBeCloseTo(1.4919, 4);
    expect(Math.sqrt(low * high)).toBeCloseTo(factor, 12);
  });

  it("is not surely firmer by 5 points, by 10 it is", () => {
    expect(computeHardnessFactor(60, 65).low).toBeLessThan(1);
    expect(computeHardnessFactor(55, 65).low).toBeGreaterThan(1);
  });

  it("turns round with its two figures", () => {
    const [up, down] = [computeHardnessFactor(50, 62), computeHardnessFactor(62, 50)];
    expect(up.factor * down.factor).toBeCloseTo(1, 12);
    expect(up.low * down.high).toBeCloseTo(1, 12);
  });

  it("spreads by the slope of the relation at each figure", () => {
    const step = 1e-4;
    const slope = (s: number): number =>
      Math.log(computeShearModulus(s + step) / computeShearModulus(s - step)) / (2 * step);
    const expected = Math.hypot(HARDNESS_DEVIATION * slope(45), HARDNESS_DEVIATION * slope(72), COMPOUND_LOG_DEVIATION);
    expect(computeHardnessFactor(45, 72).logSd).toBeCloseTo(expected, 8);
  });
});
