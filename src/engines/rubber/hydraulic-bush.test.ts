import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { madeBush as bush, madeBushes as bushes } from "../../../test/samples/made-bushes.ts";
import { computeComplexStiffness, computeDynamicStiffness, fluidStates, type HydraulicBush } from "./hydraulic-bush.ts";
import { solvePeakLoss } from "./peak-loss.ts";

const frequencies = fc.double({ min: 0.2, max: 80, noNaN: true });

/**
 * Energy taken in one cycle of 1 mm amplitude, by running the fluid column in time (Runge and Kutta's fourth order) until
 * it has settled: m x'' + c x' = k_v (u - x), force k_v (u - x).
 */
function cycleEnergy(of: HydraulicBush, frequency: number): number {
  const w = 2 * Math.PI * frequency;
  const amplitude = 1e-3;
  const steps = 4000;
  const cycles = Math.ceil((12 * of.fluidInertia * frequency) / of.fluidDamping) + 20;
  const dt = 1 / (frequency * steps);
  const force = (t: number, x: number): number => of.volume * (amplitude * Math.sin(w * t) - x);
  const slope = (t: number, x: number, v: number): number => (force(t, x) - of.fluidDamping * v) / of.fluidInertia;
  let [t, x, v, work] = [0, 0, 0, 0];
  for (let i = 0; i < cycles * steps; i++) {
    const a1 = slope(t, x, v);
    const a2 = slope(t + dt / 2, x + (v * dt) / 2, v + (a1 * dt) / 2);
    const a3 = slope(t + dt / 2, x + (v * dt) / 2 + (a1 * dt * dt) / 4, v + (a2 * dt) / 2);
    const a4 = slope(t + dt, x + v * dt + (a2 * dt * dt) / 2, v + a3 * dt);
    x += v * dt + ((a1 + a2 + a3) * dt * dt) / 6;
    v += ((a1 + 2 * a2 + 2 * a3 + a4) * dt) / 6;
    t += dt;
    if (i >= (cycles - 1) * steps) work += force(t, x) * amplitude * w * Math.cos(w * t) * dt;
  }
  return work;
}

describe("a hydraulic bush", () => {
  it("gives no energy: its loss angle lies between 0 and 180 degrees, sound and leaked", () => {
    fc.assert(
      fc.property(bushes, frequencies, (one, f) => {
        for (const state of fluidStates) {
          const { lossAngle, magnitude } = computeDynamicStiffness(one, state, f);
          expect(lossAngle).toBeGreaterThan(0);
          expect(lossAngle).toBeLessThan(Math.PI);
          expect(magnitude).toBeGreaterThan(0);
        }
      }),
      { seed: 51, numRuns: 500 },
    );
  });

  it("takes in a cycle what its imaginary part says: pi Im K X²", () => {
    for (const f of [4, 12, 30]) {
      const branch = computeComplexStiffness(bush, "sound", 2 * Math.PI * f).imaginary - bush.rubber * bush.lossFactor;
      expect(cycleEnergy(bush, f) / (Math.PI * branch * 1e-6)).toBeCloseTo(1, 5);
    }
  });

  it("a static push does not show that the fluid is gone, a shaker does", () => {
    const still = computeComplexStiffness(bush, "sound", 0);
    expect(still).toEqual(computeComplexStiffness(bush, "leaked", 0));
    const slow = computeDynamicStiffness(bush, "sound", 0.1).magnitude;
    expect(slow / computeDynamicStiffness(bush, "leaked", 0.1).magnitude).toBeCloseTo(1, 3);
    const at15 = computeDynamicStiffness(bush, "sound", 15);
    expect(at15.lossAngle / computeDynamicStiffness(bush, "leaked", 15).lossAngle).toBeGreaterThan(10);
  });

  it("far above its own frequency the fluid stands still and its rate adds to the rubber's", () => {
    const { real } = computeComplexStiffness(bush, "sound", 2 * Math.PI * 1e5);
    expect(real / (bush.rubber + bush.volume)).toBeCloseTo(1, 6);
  });

  it("knows no unit of force: all rates, inertia and damping times a number leave every angle", () => {
    fc.assert(
      fc.property(bushes, frequencies, fc.double({ min: 0.01, max: 100, noNaN: true }), (one, f, by) => {
        const more = {
          rubber: one.rubber * by,
          lossFactor: one.lossFactor,
          volume: one.volume * by,
          fluidInertia: one.fluidInertia * by,
          fluidDamping: one.fluidDamping * by,
        };
        const a = computeDynamicStiffness(one, "sound", f);
        const b = computeDynamicStiffness(more, "sound", f);
        expect(b.lossAngle).toBeCloseTo(a.lossAngle, 11);
        expect(b.magnitude / (a.magnitude * by)).toBeCloseTo(1, 11);
      }),
      { seed: 52, numRuns: 200 },
    );
  });
});

describe("the largest loss angle", () => {
  it("is found where a fine search finds it, and never below", () => {
    fc.assert(
      fc.property(bushes, fc.double({ min: 0.5, max: 20, noNaN: true }), frequencies, (one, low, width) => {
        const high = low + width;
        const peak = solvePeakLoss(one, [low, high]);
        let best = 0;
        for (let i = 0; i <= 2000; i++)
          best = Math.max(best, computeDynamicStiffness(one, "sound", low + (width * i) / 2000).lossAngle);
        expect(peak.lossAngle).toBeGreaterThanOrEqual(best - 1e-12);
        expect(computeDynamicStiffness(one, "sound", peak.frequency).lossAngle).toBe(peak.lossAngle);
        expect(peak.atEnd).toBe(peak.frequency === low || peak.frequency === high);
      }),
      { seed: 53, numRuns: 300 },
    );
  });

  it("is not missed where it is narrower than any grid", () => {
    const narrow = { ...bush, fluidDamping: 0.05 };
    const { frequency, lossAngle, atEnd } = solvePeakLoss(narrow, [0.01, 1000]);
    expect(atEnd).toBe(false);
    expect(lossAngle).toBeGreaterThan(3);
    const beside = (by: number): number => computeDynamicStiffness(narrow, "sound", frequency * by).lossAngle;
    expect(Math.max(beside(1 - 1e-5), beside(1 + 1e-5))).toBeLessThan(lossAngle);
  });
});
