import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { computeSpinAxis } from "#engines/linkage";
import { dot } from "#numeric";
import { radiansFromDegrees as rad } from "#quantity";
import { computeAxisDirection, computeCamberAtToe, computeSteeringAxisFromReadings } from "./rigid-sweep.ts";

const runs = { seed: 9, numRuns: 300 };
const degrees = (min: number, max: number) => fc.double({ min, max, noNaN: true }).map(rad);
const wheels = fc.record({ camber: degrees(-3, 3), toe: degrees(-1, 1) });
const axes = fc.record({ caster: degrees(-2, 12), inclination: degrees(0, 16) });

describe("a wheel turned about a fixed axis", () => {
  it("keeps the angle of its spin axis to that axis", () => {
    fc.assert(
      fc.property(axes, wheels, degrees(-35, 35), (axis, wheel, toe) => {
        const camber = computeCamberAtToe(axis, wheel, toe);
        if (camber === null) throw new Error("not reached");
        const k = computeAxisDirection(axis);
        const before = dot(k, computeSpinAxis(wheel.camber, wheel.toe));
        expect(dot(k, computeSpinAxis(camber, toe))).toBeCloseTo(before, 13);
      }),
      runs,
    );
  });

  it("stands where it stood when it is turned back", () => {
    fc.assert(
      fc.property(axes, wheels, (axis, wheel) => {
        expect(computeCamberAtToe(axis, wheel, wheel.toe)).toBeCloseTo(wheel.camber, 13);
      }),
      runs,
    );
  });

  it("gives its axis back from three readings", () => {
    fc.assert(
      fc.property(axes, wheels, (axis, wheel) => {
        const at = (toe: number) => ({ toe, camber: computeCamberAtToe(axis, wheel, toe) ?? Number.NaN });
        const found = computeSteeringAxisFromReadings([wheel, at(rad(20)), at(rad(-20))]);
        expect(found?.caster).toBeCloseTo(axis.caster, 10);
        expect(found?.inclination).toBeCloseTo(axis.inclination, 10);
      }),
      runs,
    );
  });

  it("is not reached where the wheel spins nearly about the axis itself", () => {
    expect(computeCamberAtToe({ caster: 0, inclination: rad(80) }, { camber: rad(9), toe: 0 }, rad(60))).toBeNull();
  });

  it("says nothing of its axis from readings that are the same", () => {
    const one = { camber: -0.01, toe: 0.002 };
    expect(computeSteeringAxisFromReadings([one, one, one])).toBeNull();
  });
});
