import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  add,
  cross,
  dot,
  mirrorY,
  norm,
  perpendicularTo,
  rotate,
  scale,
  subtract,
  unitVector,
  type Vector,
} from "./vector.ts";

const runs = { seed: 8, numRuns: 200 };
const entry = fc.double({ min: -5, max: 5, noNaN: true });
const vector: fc.Arbitrary<Vector> = fc.tuple(entry, entry, entry).filter((v) => Math.hypot(...v) > 0.1);

describe("vectors", () => {
  it("cross at right angles, with the length of the parallelogram", () => {
    fc.assert(
      fc.property(vector, vector, (a, b) => {
        const c = cross(a, b);
        expect(dot(c, a)).toBeCloseTo(0, 10);
        expect(dot(c, b)).toBeCloseTo(0, 10);
        expect(norm(c) ** 2).toBeCloseTo(norm(a) ** 2 * norm(b) ** 2 - dot(a, b) ** 2, 8);
      }),
      runs,
    );
    expect(cross([1, 0, 0], [0, 1, 0])).toEqual([0, 0, 1]);
  });

  it("have a unit vector, and one across it", () => {
    fc.assert(
      fc.property(vector, (a) => {
        const u = unitVector(a);
        const p = perpendicularTo(u);
        expect(norm(u)).toBeCloseTo(1, 14);
        expect(norm(p)).toBeCloseTo(1, 14);
        expect(dot(u, p)).toBeCloseTo(0, 14);
      }),
      runs,
    );
  });

  it("add, subtract, scale, mirror and turn", () => {
    expect(add([1, 2, 3], [4, 5, 6])).toEqual([5, 7, 9]);
    expect(subtract([4, 5, 6], [1, 2, 3])).toEqual([3, 3, 3]);
    expect(scale([1, -2, 3], 2)).toEqual([2, -4, 6]);
    expect(mirrorY([1, 2, 3])).toEqual([1, -2, 3]);
    expect(rotate([0, -1, 0, 1, 0, 0, 0, 0, 1], [1, 2, 3])).toEqual([-2, 1, 3]);
  });
});
