import { describe, expect, it } from "vitest";
import { radiansFromDegrees } from "#quantity";
import {
  computeCorrectOuterAngle,
  computeTrapezoidArmAngle,
  computeTrapezoidOuterAngle,
  computeTurnAngles,
} from "./steering-geometry.ts";

const trapezoid = { pivots: 1.25, arm: 0.15, rod: 1.2 };

describe("a turn without slip", () => {
  it("has one centre for both front wheels, on the line of the rear axle", () => {
    const turn = { pivots: 1.5, wheelbase: 2.7 };
    for (const radius of [2, 5, 40]) {
      const angles = computeTurnAngles(radius, turn);
      if (!angles) throw new Error("no turn");
      expect(computeCorrectOuterAngle(angles.inner, turn)).toBeCloseTo(angles.outer, 14);
      expect(angles.outerRadius * Math.sin(angles.outer)).toBeCloseTo(2.7, 13);
    }
  });

  it("goes straight on where the inner wheel does", () => {
    expect(computeCorrectOuterAngle(0, { pivots: 1.5, wheelbase: 2.7 })).toBe(0);
  });

  it("has no centre between the wheels", () => {
    expect(computeTurnAngles(0.7, { pivots: 1.5, wheelbase: 2.7 })).toBeNull();
    expect(computeTurnAngles(Number.NaN, { pivots: 1.5, wheelbase: 2.7 })).toBeNull();
  });
});

describe("a steering trapezoid", () => {
  it("keeps its rod in every position", () => {
    const straight = computeTrapezoidArmAngle(trapezoid) ?? Number.NaN;
    for (const degrees of [-40, -10, 0, 10, 40]) {
      const inner = radiansFromDegrees(degrees);
      const outer = computeTrapezoidOuterAngle(trapezoid, inner) ?? Number.NaN;
      const tip = (pivot: number, angle: number): [number, number] => [
        pivot + 0.15 * Math.cos(angle),
        0.15 * Math.sin(angle),
      ];
      const a = tip(0, straight - Math.PI / 2 + inner);
      const b = tip(1.25, outer - Math.PI / 2 - straight);
      expect(Math.hypot(b[0] - a[0], b[1] - a[1])).toBeCloseTo(1.2, 13);
    }
  });

  it("is symmetric: turned the other way the wheels change places", () => {
    for (const degrees of [5, 20, 35]) {
      const outer = computeTrapezoidOuterAngle(trapezoid, radiansFromDegrees(degrees)) ?? Number.NaN;
      expect(computeTrapezoidOuterAngle(trapezoid, -outer)).toBeCloseTo(-radiansFromDegrees(degrees), 12);
    }
  });

  it("turns both wheels alike where its rod is as long as the pivots are apart", () => {
    const parallel = { pivots: 1.25, arm: 0.15, rod: 1.25 };
    expect(computeTrapezoidOuterAngle(parallel, 0.5)).toBeCloseTo(0.5, 13);
  });

  it("says so where it does not meet or does not reach", () => {
    expect(computeTrapezoidArmAngle({ pivots: 1.25, arm: 0.01, rod: 1.2 })).toBeNull();
    expect(computeTrapezoidOuterAngle({ pivots: 1.25, arm: 0.01, rod: 1.2 }, 0.1)).toBeNull();
    expect(computeTrapezoidOuterAngle({ pivots: 1.25, arm: 0.5, rod: 0.5 }, radiansFromDegrees(-80))).toBeNull();
  });
});
