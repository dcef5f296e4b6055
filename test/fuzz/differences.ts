/**
 * Derivative of f at x by central differences at h, h/2, ... extrapolated (Richardson, Romberg's table): what exact
 * derivatives are held against. Truncation falls as h to the 2 levels; rounding grows as 2^levels/h.
 */
export function differentiate(f: (x: number) => number, x: number, h: number, levels = 4): number {
  const table = Array.from({ length: levels }, (_, i) => {
    const step = h / 2 ** i;
    return (f(x + step) - f(x - step)) / (2 * step);
  });
  for (let column = 1; column < levels; column++)
    for (let row = levels - 1; row >= column; row--) {
      const finer = table[row] as number;
      table[row] = finer + (finer - (table[row - 1] as number)) / (4 ** column - 1);
    }
  return table[levels - 1] as number;
}

/** The same for a function with several values. */
export function differentiateAll(
  f: (x: number) => readonly number[],
  x: number,
  h: number,
  levels = 4,
): readonly number[] {
  const known = new Map<number, readonly number[]>();
  const at = (point: number): readonly number[] => {
    const value = known.get(point) ?? f(point);
    known.set(point, value);
    return value;
  };
  return at(x).map((_, i) => differentiate((point) => at(point)[i] as number, x, h, levels));
}

/** How far analytic derivatives lie from differences, and whether any entry differs at all. */
export interface Comparison {
  readonly worst: number;
  readonly size: number;
  /** Entries that are the same to the last bit, of those that are not nought. */
  readonly identical: number;
  readonly entries: number;
}

/** Compares derivatives with differences; all of them the same to the last bit would mean one was copied. */
export function compareDerivatives(exact: readonly number[], differences: readonly number[]): Comparison {
  let worst = 0;
  let identical = 0;
  let entries = 0;
  exact.forEach((e, i) => {
    const d = differences[i] as number;
    worst = Math.max(worst, Number.isFinite(e - d) ? Math.abs(e - d) : Number.POSITIVE_INFINITY);
    if (e === 0 && d === 0) return;
    entries++;
    if (e === d) identical++;
  });
  return { worst, size: Math.max(...exact.map(Math.abs)), identical, entries };
}

/** Makes uniform numbers in [0, 1) from a seed (a linear congruence; plenty for moving points about). */
export function makeRandom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}
