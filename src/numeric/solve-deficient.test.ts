import { describe, expect, it } from "vitest";
import { seededRandom } from "./seeded-random.ts";
import { solveDeficient } from "./solve-deficient.ts";

const random = seededRandom(7);
const entries = (count: number): Float64Array => Float64Array.from({ length: count }, () => random() - 0.5);
const times = (a: Float64Array, x: Float64Array): Float64Array =>
  x.map((_, i) => x.reduce((sum, value, j) => sum + (a[i * x.length + j] as number) * value, 0));

describe("equations that may leave unknowns free", () => {
  it("are met, and what they leave free is counted", () => {
    for (const rank of [6, 5, 3, 1]) {
      const [left, right] = [entries(36), entries(36)];
      const a = new Float64Array(36);
      for (let i = 0; i < 6; i++)
        for (let j = 0; j < 6; j++)
          for (let k = 0; k < rank; k++)
            a[6 * i + j] = (a[6 * i + j] as number) + (left[6 * i + k] as number) * (right[6 * k + j] as number);
      // Unknowns and equations as unlike as forces and moments are.
      const sizes = [1, 1e-3, 1e2, 1, 1e-2, 10];
      for (let i = 0; i < 6; i++)
        for (let j = 0; j < 6; j++)
          a[6 * i + j] = (a[6 * i + j] as number) / ((sizes[i] as number) * (sizes[j] as number));
      const b = times(a, entries(6));
      const { x, free, unmet } = solveDeficient(a, b, sizes, 1e-10);
      expect(free).toBe(6 - rank);
      expect(unmet).toBeLessThan(1e-10);
      times(a, x).forEach((value, i) => {
        expect(Math.abs(value - (b[i] as number))).toBeLessThan(1e-9 * Math.max(...b.map(Math.abs)));
      });
    }
  });

  it("that contradict each other are said to", () => {
    expect(solveDeficient(Float64Array.from([1, 2, 2, 4]), Float64Array.from([1, 3]), [1, 1], 1e-10)).toMatchObject({
      free: 1,
    });
    expect(
      solveDeficient(Float64Array.from([1, 2, 2, 4]), Float64Array.from([1, 3]), [1, 1], 1e-10).unmet,
    ).toBeGreaterThan(0.1);
    expect(solveDeficient(Float64Array.from([1, 2, 2, 4]), Float64Array.from([1, 2]), [1, 1], 1e-10).unmet).toBe(0);
  });

  it("of noughts leave everything free", () => {
    const { x, free } = solveDeficient(new Float64Array(9), new Float64Array(3), [1, 1, 1], 1e-10);
    expect([free, ...x]).toEqual([3, 0, 0, 0]);
  });
});
