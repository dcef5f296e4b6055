/**
 * Dense linear equations by LU factorisation with partial pivoting, in place and without allocation, so that an
 * iteration can reuse its arrays and a derivative can reuse the factorisation of the solution it belongs to.
 * Matrices are row-major Float64Array of n*n.
 */
export interface Factorisation {
  readonly n: number;
  readonly lu: Float64Array;
  readonly pivots: Int32Array;
  /** Sign of the determinant, 0 where a pivot vanished. */
  sign: -1 | 0 | 1;
  /** Smallest over largest pivot magnitude; near zero means near singular. */
  pivotRatio: number;
}

/** Room for the factorisation of an n by n matrix. */
export function makeFactorisation(n: number): Factorisation {
  return { n, lu: new Float64Array(n * n), pivots: new Int32Array(n), sign: 0, pivotRatio: 0 };
}

/**
 * Factorises the matrix that stands in `f.lu`, overwriting it.
 * Returns false (and sign 0) where a pivot is exactly zero or not finite; the factorisation must not be used then.
 */
export function factorise(f: Factorisation): boolean {
  const { n, lu, pivots } = f;
  let sign: -1 | 1 = 1;
  let least = Number.POSITIVE_INFINITY;
  let largest = 0;
  for (let k = 0; k < n; k++) {
    const top = k * n;
    let p = top;
    let best = Math.abs(lu[top + k] as number);
    for (let row = top + n; row < n * n; row += n) {
      const v = Math.abs(lu[row + k] as number);
      if (v > best) {
        best = v;
        p = row;
      }
    }
    pivots[k] = p / n;
    // False for nought, for NaN and for infinity.
    if (!(best > 0 && best < Number.POSITIVE_INFINITY)) {
      f.sign = 0;
      f.pivotRatio = 0;
      return false;
    }
    if (best < least) least = best;
    if (best > largest) largest = best;
    if (p !== top) {
      sign = sign === 1 ? -1 : 1;
      for (let j = 0; j < n; j++) {
        const t = lu[top + j] as number;
        lu[top + j] = lu[p + j] as number;
        lu[p + j] = t;
      }
    }
    const pivot = lu[top + k] as number;
    if (pivot < 0) sign = sign === 1 ? -1 : 1;
    for (let row = top + n; row < n * n; row += n) {
      const m = (lu[row + k] as number) / pivot;
      lu[row + k] = m;
      if (m !== 0) for (let j = k + 1; j < n; j++) lu[row + j] = (lu[row + j] as number) - m * (lu[top + j] as number);
    }
  }
  f.sign = sign;
  f.pivotRatio = least / largest;
  return true;
}

/** Solves A x = b with the factorisation of A; `b` is overwritten with x. */
export function solveFactorised(f: Factorisation, b: Float64Array): void {
  const { n, lu, pivots } = f;
  for (let k = 0; k < n; k++) {
    const p = pivots[k] as number;
    if (p !== k) {
      const t = b[k] as number;
      b[k] = b[p] as number;
      b[p] = t;
    }
  }
  for (let i = 1; i < n; i++) {
    const row = i * n;
    let s = b[i] as number;
    for (let j = 0; j < i; j++) s -= (lu[row + j] as number) * (b[j] as number);
    b[i] = s;
  }
  for (let i = n - 1; i >= 0; i--) {
    const row = i * n;
    let s = b[i] as number;
    for (let j = i + 1; j < n; j++) s -= (lu[row + j] as number) * (b[j] as number);
    b[i] = s / (lu[row + i] as number);
  }
}

/** Solves transpose(A) x = b with the factorisation of A; `b` is overwritten with x. */
export function solveFactorisedTransposed(f: Factorisation, b: Float64Array): void {
  const { n, lu, pivots } = f;
  for (let i = 0; i < n; i++) {
    let s = b[i] as number;
    for (let j = 0; j < i; j++) s -= (lu[j * n + i] as number) * (b[j] as number);
    b[i] = s / (lu[i * n + i] as number);
  }
  for (let i = n - 1; i >= 0; i--) {
    let s = b[i] as number;
    for (let j = i + 1; j < n; j++) s -= (lu[j * n + i] as number) * (b[j] as number);
    b[i] = s;
  }
  for (let k = n - 1; k >= 0; k--) {
    const p = pivots[k] as number;
    if (p !== k) {
      const t = b[k] as number;
      b[k] = b[p] as number;
      b[p] = t;
    }
  }
}

/**
 * Null space of the rows of a by Gaussian elimination with complete pivoting: combinations of rows that vanish.
 * Returns, for each dependent row, the weights of all rows whose sum is zero (relative to `tolerance` of the largest
 * entry), largest weight 1; an empty list where the rows are independent.
 */
export function dependentRows(a: readonly (readonly number[])[], tolerance = 1e-9): number[][] {
  const rows = a.length;
  const cols = a[0]?.length ?? 0;
  const work = a.map((row) => [...row]);
  const weights = a.map((_, i) => a.map((__, j) => (i === j ? 1 : 0)));
  const scale = Math.max(...a.flat().map(Math.abs), 0);
  const usedColumns = new Set<number>();
  const open = new Set(work.keys());
  for (let step = 0; step < Math.min(rows, cols); step++) {
    let best = 0;
    let pr = -1;
    let pc = -1;
    for (const i of open)
      for (let j = 0; j < cols; j++) {
        const v = Math.abs(work[i]?.[j] ?? 0);
        if (!usedColumns.has(j) && v > best) {
          best = v;
          pr = i;
          pc = j;
        }
      }
    if (pr < 0 || best <= tolerance * scale) break;
    open.delete(pr);
    usedColumns.add(pc);
    const pivotRow = work[pr] as number[];
    const pivotWeights = weights[pr] as number[];
    for (const i of open) {
      const row = work[i] as number[];
      const w = weights[i] as number[];
      const m = (row[pc] as number) / (pivotRow[pc] as number);
      for (let j = 0; j < cols; j++) row[j] = (row[j] as number) - m * (pivotRow[j] as number);
      for (let j = 0; j < rows; j++) w[j] = (w[j] as number) - m * (pivotWeights[j] as number);
    }
  }
  return [...open].map((i) => {
    const w = weights[i] as number[];
    const top = Math.max(...w.map(Math.abs));
    return w.map((x) => x / top);
  });
}
