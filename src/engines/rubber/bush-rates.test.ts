import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type BondedBush, computeBushRates } from "./bush-rates.ts";
import { computeShearModulus } from "./shear-modulus.ts";

const bush: BondedBush = { inner: 0.01, outer: 0.02, length: 0.04, shearModulus: 8e5 };

/** Rings of rubber one after another, each turned or pushed past the next (Simpson's rule). */
function sumRings(compliance: (radius: number) => number, from: number, to: number): number {
  const n = 2000;
  const h = (to - from) / n;
  let sum = 0;
  for (let i = 0; i <= n; i++) sum += compliance(from + i * h) * (i === 0 || i === n ? 1 : i % 2 === 1 ? 4 : 2);
  return (sum * h) / 3;
}

const bushes = fc
  .record({
    inner: fc.double({ min: 0.004, max: 0.03, noNaN: true }),
    wall: fc.double({ min: 1.02, max: 6, noNaN: true }),
    length: fc.double({ min: 0.005, max: 0.12, noNaN: true }),
    shearModulus: fc.double({ min: 3e5, max: 3e6, noNaN: true }),
  })
  .map(({ inner, wall, length, shearModulus }): BondedBush => ({ inner, outer: inner * wall, length, shearModulus }));

describe("rates of a bonded bush", () => {
  it("twist and push along are rings one after another", () => {
    const { inner, outer, length, shearModulus } = bush;
    const { torsional, axialLong } = computeBushRates(bush);
    const twist = sumRings((r) => 1 / (2 * Math.PI * r ** 3 * length * shearModulus), inner, outer);
    const push = sumRings((r) => 1 / (2 * Math.PI * r * length * shearModulus), inner, outer);
    expect(torsional * twist).toBeCloseTo(1, 9);
    expect(axialLong * push).toBeCloseTo(1, 9);
  });

  it("grow with size as they must: rates by length as one, twist as the third power", () => {
    fc.assert(
      fc.property(bushes, fc.double({ min: 0.1, max: 10, noNaN: true }), (one, by) => {
        const a = computeBushRates(one);
        const b = computeBushRates({ ...one, inner: one.inner * by, outer: one.outer * by, length: one.length * by });
        for (const key of ["axialLong", "radialLong", "radialShort"] as const)
          expect(b[key] / (a[key] * by)).toBeCloseTo(1, 9);
        expect(b.torsional / (a.torsional * by ** 3)).toBeCloseTo(1, 9);
      }),
      { seed: 41, numRuns: 200 },
    );
  });

  it("across: never softer than a thin slice, never stiffer than an endless bush; along: softer than endless", () => {
    let inside = 0;
    fc.assert(
      fc.property(bushes, (one) => {
        const { radial, radialLong, radialShort, axial, axialLong } = computeBushRates(one);
        expect(radialShort).toBeLessThan(radialLong);
        if (radial === null) return;
        inside += 1;
        expect(radial).toBeGreaterThanOrEqual(radialShort);
        expect(radial).toBeLessThanOrEqual(radialLong);
        if (axial !== null) expect(axial).toBeLessThan(axialLong);
      }),
      { seed: 42, numRuns: 500 },
    );
    expect(inside).toBeGreaterThan(100);
  });

  it("keep their digits in a thin layer, where two parts nearly cancel", () => {
    // Third order in u = (b - a)/(b + a) with its next two terms; what is left out is of the order u^6 against 1.
    const u = 1e-4;
    const thin = computeBushRates({ ...bush, inner: 0.02 * (1 - u), outer: 0.02 * (1 + u) });
    const s = 2 * 0.02 ** 2 * (1 + u * u);
    const term = u ** 3 * (4 / 3 + (8 / 15) * u ** 2);
    const expected = (4 * Math.PI * bush.shearModulus * bush.length * s) / (0.04 ** 2 * term);
    expect(thin.radialLong / expected).toBeCloseTo(1, 11);
  });

  it("pass from series to logarithm without a step", () => {
    const at = (u: number): number =>
      computeBushRates({ ...bush, inner: 0.02 * (1 - u), outer: 0.02 * (1 + u) }).radialLong;
    expect(at(0.25) / at(0.25 + 1e-13)).toBeCloseTo(1, 10);
  });

  it.each([
    ["on the ends of the fit", { inner: 0.006, outer: 0.02, length: 0.168 }, true, true],
    ["too thick a wall", { inner: 0.0059, outer: 0.02, length: 0.05 }, false, false],
    ["too thin a wall", { inner: 0.0181, outer: 0.02, length: 0.02 }, false, false],
    ["too long", { inner: 0.01, outer: 0.02, length: 0.121 }, false, false],
    ["short: across only", { inner: 0.01, outer: 0.02, length: 0.0149 }, true, false],
    ["a disc", { inner: 0.01, outer: 0.02, length: 0.0049 }, false, false],
  ])("%s", (_, size, across, along) => {
    const { radial, axial } = computeBushRates({ ...bush, ...size });
    expect([radial !== null, axial !== null]).toEqual([across, along]);
  });
});

describe("modulus from hardness", () => {
  it("a firmer bush cannot be told by a hand: Shore 55 to 65 is 1.49 times, 60 to 65 is 1.23 times", () => {
    expect(computeShearModulus(65) / computeShearModulus(55)).toBeCloseTo(1.4919, 4);
    expect(computeShearModulus(65) / computeShearModulus(60)).toBeCloseTo(1.2277, 4);
  });

  it("rises over the whole range", () => {
    for (let s = 20; s < 80; s++) expect(computeShearModulus(s + 1)).toBeGreaterThan(computeShearModulus(s));
  });
});
