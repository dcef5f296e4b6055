import { type CholeskyFactor, factoriseCholesky } from "#numeric";

/**
 * How the errors of the hard points of one axle hang together: their correlations, left side. Points are named after their
 * first end, as the assembly names them; coordinates run x, y, z of one point after another.
 */
export interface PointCorrelation {
  readonly points: readonly string[];
  /** Below the diagonal, row by row: row i has i + 1 numbers and belongs to coordinate i + 1. */
  readonly lower: readonly (readonly number[])[];
}

/** Symmetric, with ones on its diagonal; three rows for each point. */
export type CorrelationMatrix = readonly (readonly number[])[];

/** Added to the diagonal before it is factorised: a combination that is known for sure leaves nothing of it. */
const ROUNDING = 1e-9;

/** Correlations of the named points in the asked order; a point that is not listed hangs together with none. */
export function correlationAmong(
  { points, lower }: PointCorrelation,
  names: readonly string[],
  mirrored = false,
): CorrelationMatrix {
  const places = names.flatMap((name) => {
    const point = points.indexOf(name);
    return [0, 1, 2].map((axis) => ({ row: point < 0 ? -1 : 3 * point + axis, turned: mirrored && axis === 1 }));
  });
  return places.map((a, i) =>
    places.map((b, j) => {
      if (i === j) return 1;
      if (a.row < 0 || b.row < 0) return 0;
      const value = lower[Math.max(a.row, b.row) - 1]?.[Math.min(a.row, b.row)] ?? 0;
      return a.turned === b.turned ? value : -value;
    }),
  );
}

/** Writes a matrix as it is kept. */
export const keptCorrelation = (points: readonly string[], matrix: CorrelationMatrix): PointCorrelation => ({
  points,
  lower: matrix.slice(1).map((row, i) => row.slice(0, i + 1)),
});

/** Lower triangle L of correlations C = L Lᵀ; null where no errors can hang together so. */
export const factoriseCorrelation = (matrix: CorrelationMatrix): CholeskyFactor | null =>
  factoriseCholesky(matrix.map((row, i) => row.map((value, j) => (i === j ? value + ROUNDING : value))));
