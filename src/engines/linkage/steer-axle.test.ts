import { describe, expect, it } from "vitest";
import type { Vector } from "#numeric";
import type { CornerGeometry } from "./geometry.ts";
import { computeSteeredAxle } from "./steer-axle.ts";
import { computeCorrectOuterAngle } from "./steering-geometry.ts";

/**
 * A wheel that turns about an upright axis through the origin of its joints: two level arms whose outer joints stand one
 * above the other, steered by a rod that lies along y at the end of an arm that points straight back.
 */
function uprightCorner(arm: number, rod: number, back: number): CornerGeometry {
  const pair = (name: string, z: number) =>
    [0.2, -0.2].map((x, i) => ({
      name: `${name}-${i}`,
      inner: [x, 0.35, z] as Vector,
      outer: [0, 0.7, z] as Vector,
      steered: false,
    }));
  const end: Vector = [-arm * Math.cos(back), 0.7 - arm * Math.sin(back), 0.3];
  return {
    wheel: { centre: [0, 0.75, 0.3], camber: 0, toe: 0, loadedRadius: 0.3 },
    links: [
      ...pair("lower", 0.15),
      ...pair("upper", 0.45),
      { name: "rod", inner: [end[0], end[1] - rod, 0.3], outer: end, steered: true },
    ],
  };
}

/** Angle of a steering arm whose end is drawn by a rod: two circles, the branch that goes through straight ahead. */
function turnInPlane(arm: number, rod: number, back: number, rack: number): number {
  const start = [-arm * Math.cos(back), 0.7 - arm * Math.sin(back)] as const;
  const inner = [start[0], start[1] - rod + rack] as const;
  const off = [inner[0], inner[1] - 0.7] as const;
  const distance = Math.hypot(...off);
  const corner = Math.acos((arm * arm + distance * distance - rod * rod) / (2 * arm * distance));
  const towards = Math.atan2(off[1], off[0]);
  const design = Math.atan2(start[1] - 0.7, start[0]);
  const both = [towards + corner, towards - corner].map((a) => Math.atan2(Math.sin(a - design), Math.cos(a - design)));
  return both.sort((a, b) => Math.abs(a) - Math.abs(b))[0] as number;
}

describe("a steered axle", () => {
  const turn = { pivots: 1.4, wheelbase: 2.7 };

  it.each([
    [0.14, 0.3, 0, 0.05],
    [0.14, 0.3, 0.25, 0.06],
    [0.14, 0.3, 0.25, -0.06],
    [0.12, 0.35, -0.2, 0.04],
  ])("turns both wheels as two circles say (arm %s, rod %s, arm inward %s, rack %s)", (arm, rod, back, rack) => {
    const axle = computeSteeredAxle(uprightCorner(arm, rod, back), rack, turn);
    const left = turnInPlane(arm, rod, back, rack);
    // The right wheel is the mirror image: its rod is drawn the other way, and its turn counts the other way.
    const right = -turnInPlane(arm, rod, back, -rack);
    expect(axle?.left).toBeCloseTo(left, 12);
    expect(axle?.right).toBeCloseTo(right, 12);
    const [inner, outer] = left + right > 0 ? [left, right] : [-right, -left];
    expect(axle?.inner).toBeCloseTo(Math.abs(inner), 12);
    expect(axle?.error).toBeCloseTo(Math.abs(outer) - computeCorrectOuterAngle(Math.abs(inner), turn), 12);
  });

  it("is nearer to the correct condition with its arms pointing inward, as trapezoids do", () => {
    const error = (back: number): number => computeSteeredAxle(uprightCorner(0.14, 0.3, back), 0.06, turn)?.error ?? 0;
    expect(error(0.25)).toBeLessThan(error(0));
    expect(error(0)).toBeLessThan(error(-0.25));
  });

  it("has no angles beyond the end of its rack", () => {
    expect(computeSteeredAxle(uprightCorner(0.14, 0.3, 0), 0.4, turn)).toBeNull();
  });
});
