/** A solution of equations that may leave unknowns free: those are left at nought. */
export interface DeficientSolution {
  readonly x: Float64Array;
  /** How many unknowns the equations leave free. */
  readonly free: number;
  /** Largest part of the right-hand side that no unknown can meet, over the largest of it; 0 where all can. */
  readonly unmet: number;
}

/**
 * Solves A x = b (row-major, n by n) by elimination with complete pivoting, stopping at pivots below `tolerance` of the
 * largest. `sizes` are those of the unknowns, which make them and their equations comparable. A and b are left alone.
 */
export function solveDeficient(
  a: Float64Array,
  b: Float64Array,
  sizes: ArrayLike<number>,
  tolerance: number,
): DeficientSolution {
  const n = b.length;
  const work = a.map((value, k) => value * (sizes[Math.floor(k / n)] as number) * (sizes[k % n] as number));
  const right = b.map((value, i) => value * (sizes[i] as number));
  const at = (i: number, j: number): number => work[i * n + j] as number;
  const rowOf = new Int32Array(n).fill(-1);
  const usedRows = new Set<number>();
  const order: number[] = [];
  const whole = Math.max(...right.map(Math.abs), 0);
  let largest = 0;
  while (order.length < n) {
    let best = 0;
    let pr = -1;
    let pc = -1;
    for (let i = 0; i < n; i++)
      for (let j = 0; j < n; j++)
        if (!usedRows.has(i) && rowOf[j] === -1 && Math.abs(at(i, j)) > best) {
          best = Math.abs(at(i, j));
          pr = i;
          pc = j;
        }
    largest = Math.max(largest, best);
    if (pr < 0 || best <= tolerance * largest) break;
    usedRows.add(pr);
    rowOf[pc] = pr;
    order.push(pc);
    for (let i = 0; i < n; i++) {
      if (usedRows.has(i)) continue;
      const m = at(i, pc) / at(pr, pc);
      for (let j = 0; j < n; j++) work[i * n + j] = at(i, j) - m * at(pr, j);
      right[i] = (right[i] as number) - m * (right[pr] as number);
    }
  }
  let unmet = 0;
  for (let i = 0; i < n; i++) if (!usedRows.has(i)) unmet = Math.max(unmet, Math.abs(right[i] as number));
  const x = new Float64Array(n);
  for (const pc of order.toReversed()) {
    const pr = rowOf[pc] as number;
    let s = right[pr] as number;
    for (let j = 0; j < n; j++) if (j !== pc) s -= at(pr, j) * (x[j] as number);
    x[pc] = s / at(pr, pc);
  }
  return {
    x: x.map((value, j) => value * (sizes[j] as number)),
    free: n - order.length,
    unmet: whole > 0 ? unmet / whole : 0,
  };
}
