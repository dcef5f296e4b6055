/** A pivot that has fallen to less than this share of what it was when the order was chosen asks for another order. */
const WORN_PIVOT = 0.02;

/** Where rows begin, the places of columns, and how large the pivots were when this order was chosen. */
interface EliminationOrder {
  readonly rows: readonly number[];
  readonly columns: readonly number[];
  readonly pivots: readonly number[];
}

/**
 * Elimination of the five by five matrix that is left of one knuckle's gradients once the rise of the wheel centre is known:
 * in an order of rows and columns chosen once by complete pivoting and kept while the pivots hold, so that it is written out
 * without a branch. `rows` (six numbers each) and `errors` are filled by the caller.
 */
export class OrderedElimination {
  readonly rows = new Float64Array(30);
  readonly errors = new Float64Array(5);
  /** Rows and columns in the order of elimination: offsets into `rows` and places in a row. */
  private readonly rowOrder = new Int32Array(5);
  private readonly columnOrder = new Int32Array(5);
  private readonly chosenPivots = new Float64Array(5);
  private firstOrder: EliminationOrder | null = null;
  private orderIsNew = false;
  /** By rows: multipliers left of the diagonal, reciprocal pivots on it, the eliminated matrix right of it. */
  private readonly factors = new Float64Array(25);

  /** Takes the order for the matrix that stands in `rows`, to which every solution returns. */
  chooseFirstOrder(): void {
    this.firstOrder = this.chooseOrder();
    this.takeOrder(this.firstOrder);
  }

  /** Every solution begins with the same order, so that none hangs on what was asked before. */
  returnToFirstOrder(): void {
    if (this.orderIsNew && this.firstOrder) this.takeOrder(this.firstOrder);
  }

  /**
   * Factorises the five by five matrix that is left once the rise is known (c0, c1: how the contact patch's height follows
   * a turn; nought where the wheel centre's is asked for). False where it is singular.
   */
  factorise(c0: number, c1: number): boolean {
    const { rows } = this;
    if (c0 !== 0 || c1 !== 0)
      for (let o = 0; o < 30; o += 6) {
        const g = rows[o + 2] as number;
        rows[o + 3] = (rows[o + 3] as number) - g * c1;
        rows[o + 4] = (rows[o + 4] as number) + g * c0;
      }
    if (this.eliminate()) return true;
    this.takeOrder(this.chooseOrder());
    this.orderIsNew = true;
    this.eliminate();
    const least = this.factors[24] as number;
    return least > Number.NEGATIVE_INFINITY && least < Number.POSITIVE_INFINITY;
  }

  /** Elimination in the order chosen; false where a pivot has become much smaller than it was then. */
  private eliminate(): boolean {
    const { rows, factors, rowOrder, columnOrder, chosenPivots } = this;
    const o0 = rowOrder[0] as number;
    const o1 = rowOrder[1] as number;
    const o2 = rowOrder[2] as number;
    const o3 = rowOrder[3] as number;
    const o4 = rowOrder[4] as number;
    const q0 = columnOrder[0] as number;
    const q1 = columnOrder[1] as number;
    const q2 = columnOrder[2] as number;
    const q3 = columnOrder[3] as number;
    const q4 = columnOrder[4] as number;
    const a00 = rows[o0 + q0] as number;
    const a01 = rows[o0 + q1] as number;
    const a02 = rows[o0 + q2] as number;
    const a03 = rows[o0 + q3] as number;
    const a04 = rows[o0 + q4] as number;
    const a10 = rows[o1 + q0] as number;
    let a11 = rows[o1 + q1] as number;
    let a12 = rows[o1 + q2] as number;
    let a13 = rows[o1 + q3] as number;
    let a14 = rows[o1 + q4] as number;
    const a20 = rows[o2 + q0] as number;
    let a21 = rows[o2 + q1] as number;
    let a22 = rows[o2 + q2] as number;
    let a23 = rows[o2 + q3] as number;
    let a24 = rows[o2 + q4] as number;
    const a30 = rows[o3 + q0] as number;
    let a31 = rows[o3 + q1] as number;
    let a32 = rows[o3 + q2] as number;
    let a33 = rows[o3 + q3] as number;
    let a34 = rows[o3 + q4] as number;
    const a40 = rows[o4 + q0] as number;
    let a41 = rows[o4 + q1] as number;
    let a42 = rows[o4 + q2] as number;
    let a43 = rows[o4 + q3] as number;
    let a44 = rows[o4 + q4] as number;
    const i0 = 1 / a00;
    const l10 = a10 * i0;
    const l20 = a20 * i0;
    const l30 = a30 * i0;
    const l40 = a40 * i0;
    a11 -= l10 * a01;
    a12 -= l10 * a02;
    a13 -= l10 * a03;
    a14 -= l10 * a04;
    a21 -= l20 * a01;
    a22 -= l20 * a02;
    a23 -= l20 * a03;
    a24 -= l20 * a04;
    a31 -= l30 * a01;
    a32 -= l30 * a02;
    a33 -= l30 * a03;
    a34 -= l30 * a04;
    a41 -= l40 * a01;
    a42 -= l40 * a02;
    a43 -= l40 * a03;
    a44 -= l40 * a04;
    const i1 = 1 / a11;
    const l21 = a21 * i1;
    const l31 = a31 * i1;
    const l41 = a41 * i1;
    a22 -= l21 * a12;
    a23 -= l21 * a13;
    a24 -= l21 * a14;
    a32 -= l31 * a12;
    a33 -= l31 * a13;
    a34 -= l31 * a14;
    a42 -= l41 * a12;
    a43 -= l41 * a13;
    a44 -= l41 * a14;
    const i2 = 1 / a22;
    const l32 = a32 * i2;
    const l42 = a42 * i2;
    a33 -= l32 * a23;
    a34 -= l32 * a24;
    a43 -= l42 * a23;
    a44 -= l42 * a24;
    const i3 = 1 / a33;
    const l43 = a43 * i3;
    a44 -= l43 * a34;
    const i4 = 1 / a44;
    factors[0] = i0;
    factors[1] = a01;
    factors[2] = a02;
    factors[3] = a03;
    factors[4] = a04;
    factors[5] = l10;
    factors[6] = i1;
    factors[7] = a12;
    factors[8] = a13;
    factors[9] = a14;
    factors[10] = l20;
    factors[11] = l21;
    factors[12] = i2;
    factors[13] = a23;
    factors[14] = a24;
    factors[15] = l30;
    factors[16] = l31;
    factors[17] = l32;
    factors[18] = i3;
    factors[19] = a34;
    factors[20] = l40;
    factors[21] = l41;
    factors[22] = l42;
    factors[23] = l43;
    factors[24] = i4;
    return (
      Math.abs(a00) >= WORN_PIVOT * (chosenPivots[0] as number) &&
      Math.abs(a11) >= WORN_PIVOT * (chosenPivots[1] as number) &&
      Math.abs(a22) >= WORN_PIVOT * (chosenPivots[2] as number) &&
      Math.abs(a33) >= WORN_PIVOT * (chosenPivots[3] as number) &&
      Math.abs(i4) < Number.POSITIVE_INFINITY
    );
  }

  /** Turns the errors, less what the rise `off` does to them, into the step (all but its third part). */
  substitute(off: number, step: Float64Array): void {
    const { rows, errors, factors, rowOrder, columnOrder } = this;
    const o0 = rowOrder[0] as number;
    const o1 = rowOrder[1] as number;
    const o2 = rowOrder[2] as number;
    const o3 = rowOrder[3] as number;
    const o4 = rowOrder[4] as number;
    // Errors stand in the order of the measures; a row begins six places after the one before.
    const b0 = (errors[o0 / 6] as number) - off * (rows[o0 + 2] as number);
    let b1 = (errors[o1 / 6] as number) - off * (rows[o1 + 2] as number);
    let b2 = (errors[o2 / 6] as number) - off * (rows[o2 + 2] as number);
    let b3 = (errors[o3 / 6] as number) - off * (rows[o3 + 2] as number);
    let b4 = (errors[o4 / 6] as number) - off * (rows[o4 + 2] as number);
    b1 -= (factors[5] as number) * b0;
    b2 -= (factors[10] as number) * b0 + (factors[11] as number) * b1;
    b3 -= (factors[15] as number) * b0 + (factors[16] as number) * b1 + (factors[17] as number) * b2;
    b4 -=
      (factors[20] as number) * b0 +
      (factors[21] as number) * b1 +
      (factors[22] as number) * b2 +
      (factors[23] as number) * b3;
    const x4 = b4 * (factors[24] as number);
    const x3 = (b3 - (factors[19] as number) * x4) * (factors[18] as number);
    const x2 = (b2 - (factors[13] as number) * x3 - (factors[14] as number) * x4) * (factors[12] as number);
    const x1 =
      (b1 - (factors[7] as number) * x2 - (factors[8] as number) * x3 - (factors[9] as number) * x4) *
      (factors[6] as number);
    const x0 =
      (b0 -
        (factors[1] as number) * x1 -
        (factors[2] as number) * x2 -
        (factors[3] as number) * x3 -
        (factors[4] as number) * x4) *
      (factors[0] as number);
    step[columnOrder[0] as number] = x0;
    step[columnOrder[1] as number] = x1;
    step[columnOrder[2] as number] = x2;
    step[columnOrder[3] as number] = x3;
    step[columnOrder[4] as number] = x4;
  }

  /** Complete pivoting of the matrix that stands in `rows`: the largest entry left is the next pivot. */
  private chooseOrder(): EliminationOrder {
    const pivots: number[] = [];
    const left = Array.from({ length: 5 }, (_, i) => Array.from(this.rows.subarray(6 * i, 6 * i + 6)));
    const rows = [0, 1, 2, 3, 4];
    const columns = [0, 1, 3, 4, 5];
    for (let k = 0; k < 5; k++) {
      let best: readonly [row: number, column: number] = [rows[k] as number, columns[k] as number];
      const at = (i: number, j: number): number => left[i]?.[j] as number;
      for (const i of rows.slice(k))
        for (const j of columns.slice(k)) if (Math.abs(at(i, j)) > Math.abs(at(...best))) best = [i, j];
      swap(rows, k, rows.indexOf(best[0]));
      swap(columns, k, columns.indexOf(best[1]));
      const pivot = at(...best);
      pivots.push(Math.abs(pivot));
      for (const i of rows.slice(k + 1)) {
        const m = at(i, best[1]) / pivot;
        for (const j of columns.slice(k)) (left[i] as number[])[j] = at(i, j) - m * at(best[0], j);
      }
    }
    return { rows: rows.map((row) => 6 * row), columns, pivots };
  }

  private takeOrder({ rows, columns, pivots }: EliminationOrder): void {
    this.rowOrder.set(rows);
    this.columnOrder.set(columns);
    this.chosenPivots.set(pivots);
    this.orderIsNew = false;
  }
}

function swap(list: number[], a: number, b: number): void {
  const first = list[a] as number;
  list[a] = list[b] as number;
  list[b] = first;
}
