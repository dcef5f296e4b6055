import { describe, expect, it } from "vitest";
import { dot, mirrorY, unitVector, type Vector } from "#numeric";
import { clockingOfDirection, directionOfClocking } from "./clocking.ts";

const axes: readonly Vector[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
  [0.1, 0.99, -0.03],
  [3, 1, -2],
  [0.2, -0.1, 0.9],
  [-0.4, 0.3, -0.8],
];

describe("the clocking of a bush's voids", () => {
  it("is counted from up, of an upright axis from forward, right-handed about the axis", () => {
    expect(directionOfClocking([0, 1, 0], 0)).toEqual([0, 0, 1]);
    expect(directionOfClocking([0, 2, 0], Math.PI / 2).map((c) => Math.round(c))).toEqual([1, 0, 0]);
    expect(directionOfClocking([0, 0, 5], 0)).toEqual([1, 0, 0]);
    expect(directionOfClocking([0, 0, 5], Math.PI / 2).map((c) => Math.round(c))).toEqual([0, 1, 0]);
  });

  it("is a unit vector across the axis, and comes back from it", () => {
    for (const axis of axes)
      for (const angle of [-3, -1.2, 0, 0.4, 2]) {
        const direction = directionOfClocking(axis, angle);
        expect(Math.hypot(...direction)).toBeCloseTo(1, 14);
        expect(dot(direction, unitVector(axis))).toBeCloseTo(0, 14);
        expect(clockingOfDirection(axis, direction)).toBeCloseTo(angle, 13);
      }
  });

  it("turns its sign on the other side of the car, and where the axis is given the other way round", () => {
    for (const axis of axes) {
      const direction = directionOfClocking(axis, 0.7);
      expect(clockingOfDirection(mirrorY(axis), mirrorY(direction))).toBeCloseTo(-0.7, 13);
      expect(clockingOfDirection([-axis[0], -axis[1], -axis[2]], direction)).toBeCloseTo(-0.7, 13);
    }
  });
});
