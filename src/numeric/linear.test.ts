import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dependentRows, factorise, makeFactorisation, solveFactorised, solveFactorisedTransposed } from "./linear.ts";

const runs = { seed: 6, numRuns: 200 };
const entry = fc.double({ min: -2, max: 2, noNaN: true });
/** Square matrices of 2 to 7 rows with a heavy diagonal turned by a shift, so that pivoting has to find it. */
const systems = fc
  .integer({ min: 2, max: 7 })
  .chain((n) =>
    fc.tuple(
      fc.constant(n),
      fc.array(entry, { minLength: n * n, maxLength: n * n }),
      fc.array(entry, { minLength: n, maxLength: n }),
    ),
  )
  .map(([n, a, x]) => {
    const rows = Array.from({ length: n }, (_, i) => a.slice(i * n, (i + 1) * n));
    rows.forEach((row, i) => {
      row[(i + 1) % n] = (row[(i + 1) % n] as number) + 9;
    });
    return { n, rows, x };
  });

const times = (rows: readonly (readonly number[])[], x: readonly number[]): number[] =>
  rows.map((row) => row.reduce((sum, v, j) => sum + v * (x[j] as number), 0));
const transposed = (rows: readonly (readonly number[])[]): number[][] =>
  (rows[0] ?? []).map((_, j) => rows.map((row) => row[j] as number));

describe("a factorisation", () => {
  it("solves the equations it was made of, and the transposed ones", () => {
    fc.assert(
      fc.property(systems, ({ n, rows, x }) => {
        const f = makeFactorisation(n);
        f.lu.set(rows.flat());
        expect(factorise(f)).toBe(true);
        const b = Float64Array.from(times(rows, x));
        solveFactorised(f, b);
        const t = Float64Array.from(times(transposed(rows), x));
        solveFactorisedTransposed(f, t);
        x.forEach((v, i) => {
          expect(b[i]).toBeCloseTo(v, 10);
          expect(t[i]).toBeCloseTo(v, 10);
        });
      }),
      runs,
    );
  });

  it("knows the sign of the determinant", () => {
    const signOf = (rows: readonly number[], n: number): number => {
      const f = makeFactorisation(n);
      f.lu.set(rows);
      factorise(f);
      return f.sign;
    };
    expect(signOf([2, 0, 0, 3], 2)).toBe(1);
    expect(signOf([0, 1, 1, 0], 2)).toBe(-1);
    expect(signOf([0, 0, 1, 1, 0, 0, 0, 1, 0], 3)).toBe(1);
    expect(signOf([-1, 0, 0, 0, -1, 0, 0, 0, -1], 3)).toBe(-1);
  });

  it("says so where the matrix is singular or not finite", () => {
    for (const entries of [
      [1, 2, 2, 4],
      [0, 0, 0, 0],
      [Number.NaN, 1, 1, 1],
      [Number.POSITIVE_INFINITY, 1, 1, 1],
    ]) {
      const f = makeFactorisation(2);
      f.lu.set(entries);
      expect(factorise(f)).toBe(false);
      expect(f.sign).toBe(0);
      expect(f.pivotRatio).toBe(0);
    }
  });

  it("tells near singular from sound by its pivots", () => {
    const ratioOf = (last: number): number => {
      const f = makeFactorisation(2);
      f.lu.set([1, 1, 1, last]);
      factorise(f);
      return f.pivotRatio;
    };
    expect(ratioOf(3)).toBeGreaterThan(0.1);
    expect(ratioOf(1 + 1e-12)).toBeLessThan(1e-11);
  });
});

describe("dependent rows", () => {
  it("are none where rows are independent", () => {
    expect(
      dependentRows([
        [1, 0, 0],
        [1, 1, 0],
        [1, 1, 1],
      ]),
    ).toEqual([]);
  });

  it("are named with weights that add up to nothing", () => {
    const rows = [
      [1, 2, 3],
      [0, 1, 1],
      [2, 5, 7],
      [1, 0, 0],
    ];
    const found = dependentRows(rows);
    expect(found.length).toBe(1);
    const weights = found[0] ?? [];
    const sum = times(transposed(rows), weights);
    for (const s of sum) expect(s).toBeCloseTo(0, 12);
    expect(Math.max(...weights.map(Math.abs))).toBe(1);
    expect(weights[3]).toBeCloseTo(0, 12);
  });

  it("count the surplus of rows over columns", () => {
    expect(
      dependentRows([
        [1, 0],
        [0, 1],
        [1, 1],
        [2, 3],
      ]).length,
    ).toBe(2);
    expect(dependentRows([]).length).toBe(0);
  });
});
