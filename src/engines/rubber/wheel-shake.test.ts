import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { madeBush as bush, madeBushes as bushes } from "../../../test/samples/made-bushes.ts";
import { computeComplexStiffness, fluidStates } from "./hydraulic-bush.ts";
import { computeLeakedResonance, computeWheelResponse, solveWorstResponse } from "./wheel-shake.ts";

describe("the wheel on its bush", () => {
  it("moves at standstill as the static rate says, whatever it weighs", () => {
    for (const state of fluidStates) {
      const { real, imaginary } = computeComplexStiffness(bush, state, 0);
      expect(computeWheelResponse(bush, state, 42, 0) * Math.hypot(real, imaginary)).toBeCloseTo(1, 12);
    }
  });

  it("on the bare rubber's resonance only the rubber's loss holds it: 1/(eta k_r)", () => {
    const f = computeLeakedResonance(bush, 42);
    expect(computeWheelResponse(bush, "leaked", 42, f) * bush.rubber * bush.lossFactor).toBeCloseTo(1, 9);
    expect(solveWorstResponse(bush, "leaked", 42, [5, 30])).toMatchObject({ atEnd: false, frequency: f });
  });

  it("the worst is found where a fine search finds it, and never below", () => {
    const mass = fc.double({ min: 15, max: 80, noNaN: true });
    const low = fc.double({ min: 0, max: 15, noNaN: true });
    const width = fc.double({ min: 0.5, max: 60, noNaN: true });
    fc.assert(
      fc.property(bushes, mass, low, width, (one, carried, from, wide) => {
        for (const state of fluidStates) {
          const worst = solveWorstResponse(one, state, carried, [from, from + wide]);
          let best = 0;
          for (let i = 0; i <= 1000; i++)
            best = Math.max(best, computeWheelResponse(one, state, carried, from + (wide * i) / 1000));
          expect(worst.response).toBeGreaterThanOrEqual(best * (1 - 1e-12));
          expect(worst.frequency).toBeGreaterThanOrEqual(from);
          expect(worst.frequency).toBeLessThanOrEqual(from + wide);
        }
      }),
      { seed: 61, numRuns: 200 },
    );
  });

  it("is not worse at every speed once the fluid is out: above its resonance the leaked one shakes less", () => {
    expect(computeWheelResponse(bush, "leaked", 42, 14)).toBeGreaterThan(
      3 * computeWheelResponse(bush, "sound", 42, 14),
    );
    const high = 24;
    expect(computeWheelResponse(bush, "leaked", 42, high)).toBeLessThan(computeWheelResponse(bush, "sound", 42, high));
  });
});
