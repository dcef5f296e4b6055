import { describe, expect, it } from "vitest";
import { radiansFromDegrees as rad } from "#quantity";
import { computeCasterFromSweep } from "./caster-sweep.ts";
import { computeCamberAtToe } from "./rigid-sweep.ts";

describe("caster from two readings", () => {
  it("comes near the caster for any usual axis, sweep and camber", () => {
    for (const caster of [0, 3, 7])
      for (const inclination of [5, 13])
        for (const sweep of [10, 20]) {
          const axis = { caster: rad(caster), inclination: rad(inclination) };
          const camberAt = (toe: number) =>
            computeCamberAtToe(axis, { camber: rad(-0.7), toe: 0 }, rad(toe)) ?? Number.NaN;
          const got = computeCasterFromSweep(camberAt(sweep), camberAt(-sweep), rad(sweep));
          expect(Math.abs(got.caster - rad(caster))).toBeLessThan(rad(0.05));
        }
  });

  it("is positive where the wheel leans out when it is turned out, and doubles with the difference", () => {
    const one = computeCasterFromSweep(rad(-1), rad(1), rad(20));
    expect(one.caster).toBeGreaterThan(0);
    expect(computeCasterFromSweep(rad(1), rad(-1), rad(20)).caster).toBe(-one.caster);
    expect(computeCasterFromSweep(rad(-2), rad(2), rad(20)).caster).toBeCloseTo(2 * one.caster, 15);
  });
});
