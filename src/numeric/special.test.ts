import { describe, expect, it } from "vitest";
import { computeErfc, computeNormalProbability } from "./special.ts";

/** Abramowitz and Stegun, table 7.1, from memory; the far ones by the asymptotic value in 15 digits. */
const table = [
  [0, 1],
  [0.5, 0.479500122186953],
  [1, 0.157299207050285],
  [2, 0.00467773498104727],
  [3, 2.20904969985854e-5],
  [5, 1.53745979442803e-12],
] as const;

describe("the complement of the error function", () => {
  it.each(table)("is known at %s", (x, value) => {
    expect(Math.abs(computeErfc(x) / value - 1)).toBeLessThan(1e-13);
  });

  it("adds up to two with its mirror image and falls all the way", () => {
    let last = 2;
    for (let x = -6; x <= 6; x += 0.01) {
      const value = computeErfc(x);
      expect(value + computeErfc(-x)).toBeCloseTo(2, 14);
      expect(value).toBeLessThanOrEqual(last);
      last = value;
    }
  });

  it("has no step where its two forms meet", () => {
    const slope = (-2 / Math.sqrt(Math.PI)) * Math.exp(-2.5 * 2.5);
    const below = computeErfc(2.5 - 1e-9);
    const above = computeErfc(2.5 + 1e-9);
    expect((above - below) / 2e-9).toBeCloseTo(slope, 6);
    expect(Math.abs(computeErfc(2.5) / 0.000406952017444959 - 1)).toBeLessThan(1e-12);
  });

  it("ends at its limits", () => {
    expect(computeErfc(Number.POSITIVE_INFINITY)).toBe(0);
    expect(computeErfc(Number.NEGATIVE_INFINITY)).toBe(2);
    expect(computeErfc(Number.NaN)).toBeNaN();
  });
});

describe("the normal distribution", () => {
  it("has its well-known shares", () => {
    expect(computeNormalProbability(0)).toBe(0.5);
    expect(computeNormalProbability(1.959963984540054)).toBeCloseTo(0.975, 14);
    expect(computeNormalProbability(-1)).toBeCloseTo(0.158655253931457, 14);
    expect(computeNormalProbability(Number.POSITIVE_INFINITY)).toBe(1);
  });
});
