/** Lower triangle L of a symmetric positive definite matrix A = L Lᵀ, row by row. */
export type CholeskyFactor = readonly Float64Array[];

/**
 * Factorises a symmetric matrix (rows of equal length; only the lower triangle is read); null where it is not positive
 * definite to rounding.
 */
export function factoriseCholesky(a: readonly ArrayLike<number>[]): CholeskyFactor | null {
  const l: Float64Array[] = [];
  for (let i = 0; i < a.length; i++) {
    const row = new Float64Array(i + 1);
    for (let j = 0; j <= i; j++) {
      const other = j === i ? row : (l[j] as Float64Array);
      let s = (a[i] as ArrayLike<number>)[j] as number;
      for (let k = 0; k < j; k++) s -= (row[k] as number) * (other[k] as number);
      if (j < i) {
        row[j] = s / (other[j] as number);
      } else {
        if (!(s > 0)) return null;
        row[i] = Math.sqrt(s);
      }
    }
    l.push(row);
  }
  return l;
}

/** Solves L y = b; a new array. The squared length of y is bᵀ A⁻¹ b. */
export function solveLower(l: CholeskyFactor, b: ArrayLike<number>): Float64Array {
  const y = new Float64Array(l.length);
  l.forEach((row, i) => {
    let s = b[i] as number;
    for (let k = 0; k < i; k++) s -= (row[k] as number) * (y[k] as number);
    y[i] = s / (row[i] as number);
  });
  return y;
}

/** Solves Lᵀ x = y; a new array. */
export function solveUpper(l: CholeskyFactor, y: ArrayLike<number>): Float64Array {
  const x = Float64Array.from(y);
  for (let i = l.length - 1; i >= 0; i--) {
    let s = x[i] as number;
    for (let k = i + 1; k < l.length; k++) s -= ((l[k] as Float64Array)[i] as number) * (x[k] as number);
    x[i] = s / ((l[i] as Float64Array)[i] as number);
  }
  return x;
}

/** Solves A x = b with A = L Lᵀ; a new array. */
export const solveCholesky = (l: CholeskyFactor, b: ArrayLike<number>): Float64Array => solveUpper(l, solveLower(l, b));
