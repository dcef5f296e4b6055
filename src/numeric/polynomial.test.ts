import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  addPolynomials,
  differentiatePolynomial,
  evaluatePolynomial,
  findSignChanges,
  multiplyPolynomials,
  type Polynomial,
} from "./polynomial.ts";

const fromRoots = (roots: readonly number[]): Polynomial =>
  roots.reduce<Polynomial>((p, root) => multiplyPolynomials(p, [-root, 1]), [1]);

describe("polynomials", () => {
  it("(1 + 2t)(3 - t + t²) and its derivative", () => {
    const p = multiplyPolynomials([1, 2], [3, -1, 1]);
    expect(p).toEqual([3, 5, -1, 2]);
    expect(differentiatePolynomial(p)).toEqual([5, -2, 6]);
    expect(evaluatePolynomial(p, 2)).toBe(25);
    expect(addPolynomials(p, [1], [0, 0, 0, 0, 7])).toEqual([4, 5, -1, 2, 7]);
  });

  it("finds every simple root inside and none outside, down to a thousandth of the range", () => {
    expect(findSignChanges(fromRoots([-1, 0.001, 0.25, 0.3, 0.999, 2]), 0.0005, 1)).toEqual([
      expect.closeTo(0.001, 12),
      expect.closeTo(0.25, 12),
      expect.closeTo(0.3, 12),
      expect.closeTo(0.999, 12),
    ]);
  });

  it("a constant, a root at an end, a root it only touches beside one it crosses", () => {
    expect(findSignChanges([3], 0, 1)).toEqual([]);
    expect(findSignChanges([-1, 1], 0, 1)).toEqual([1]);
    expect(findSignChanges([0, 1], 0, 1)).toEqual([0]);
    expect(findSignChanges([1, 1], 0, 1)).toEqual([]);
    const crossed = findSignChanges(fromRoots([0.5, 0.5, 0.75]), 0, 1);
    expect(crossed.some((t) => Math.abs(t - 0.75) < 1e-9)).toBe(true);
  });

  it("every sign change lies where the product of random roots has one", () => {
    const root = fc.double({ min: 0.01, max: 0.99, noNaN: true });
    fc.assert(
      fc.property(fc.uniqueArray(root, { minLength: 1, maxLength: 6 }), (roots) => {
        const rising = [...roots].sort((a, b) => a - b);
        fc.pre(rising.every((r, i) => i === 0 || r - (rising[i - 1] as number) > 0.02));
        const found = findSignChanges(fromRoots(roots), 0, 1);
        expect(found.length).toBe(roots.length);
        found.forEach((t, i) => {
          expect(Math.abs(t - (rising[i] as number))).toBeLessThan(1e-6);
        });
      }),
      { seed: 31, numRuns: 300 },
    );
  });
});
