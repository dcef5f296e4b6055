import type { SolveReport } from "#numeric";
import type { WheelLinkage } from "./corner-linkage.ts";
import { designTriad, GROUND, type Measure } from "./mechanism.ts";
import { advancePose, designPose, orthonormalise, type Pose } from "./pose.ts";
import { computeContactOffset, type Drive } from "./wheel.ts";

/** How a measure stands between body and knuckle. */
const LENGTH = 0;
const CARRIED_OFFSET = 1;
const FIXED_OFFSET = 2;

/** Newton stops when no joint is open by more than this (metres): rounding of coordinates of a metre or three. */
export const CLOSURE = 1e-15;
/** Accepted when Newton stalls on rounding: the promise itself, 1e-12 m. */
export const CLOSURE_PROMISED = 1e-12;
export const ITERATIONS = 25;
/** A pivot that has fallen to less than this share of what it was when the order was chosen asks for another order. */
const WORN_PIVOT = 0.02;

/** Where rows begin, the places of columns, and how large the pivots were when this order was chosen. */
interface EliminationOrder {
  readonly rows: readonly number[];
  readonly columns: readonly number[];
  readonly pivots: readonly number[];
}

/**
 * Newton for one knuckle held five times: the innermost loop of everything, in plain numbers and written out.
 *
 * The height to be reached gives the rise of the wheel centre (less what the contact patch adds), so five unknowns are left:
 * the other two shifts and the turn. Their order and that of the joints is chosen once by complete pivoting and kept while
 * the pivots hold, so that the elimination has no branches. The factors of the pose before serve again where the error that
 * makes lies below rounding: Newton's errors go as r, C r^2, so those of a step with old factors as 2 C r (C r^2).
 */
export class OneBodyNewton {
  private readonly kinds: Uint8Array;
  /** Knuckle point of each measure from the wheel centre at design, its body point, its direction (offsets). */
  private readonly arms = new Float64Array(15);
  private readonly fixed = new Float64Array(15);
  private readonly directions = new Float64Array(15);
  private readonly onRack = new Float64Array(5);
  private readonly design = new Float64Array(5);
  private readonly rows = new Float64Array(30);
  private readonly errors = new Float64Array(5);
  private readonly contact = new Float64Array(6);
  private readonly step = new Float64Array(6);
  /** Rows and columns in the order of elimination: offsets into `rows` and places in a row. */
  private readonly rowOrder = new Int32Array(5);
  private readonly columnOrder = new Int32Array(5);
  private readonly chosenPivots = new Float64Array(5);
  private readonly designOrder: EliminationOrder;
  private orderIsNew = false;
  /** By rows: multipliers left of the diagonal, reciprocal pivots on it, the eliminated matrix right of it. */
  private readonly factors = new Float64Array(25);

  private constructor(
    private readonly linkage: WheelLinkage,
    measures: readonly Measure[],
    kinds: readonly number[],
  ) {
    const { points, origins } = linkage.mechanism;
    const centre = origins[0] as readonly [number, number, number];
    this.kinds = Uint8Array.from(kinds);
    measures.forEach((m, i) => {
      const [body, knuckle] = m.a.body === GROUND ? [m.a, m.b] : [m.b, m.a];
      const arm = points[knuckle.point] as readonly [number, number, number];
      this.arms.set([arm[0] - centre[0], arm[1] - centre[1], arm[2] - centre[2]], 3 * i);
      this.fixed.set(points[body.point] as readonly [number, number, number], 3 * i);
      this.onRack[i] = body.onRack ? 1 : 0;
      if (m.kind === "offset") this.directions.set(designTriad(m.direction, points)[m.which], 3 * i);
    });
    this.evaluate(designPose(1), 0);
    for (let i = 0; i < 5; i++) this.design[i] = -(this.errors[i] as number);
    this.designOrder = this.chooseOrder();
    this.takeOrder(this.designOrder);
  }

  /** The solver for a linkage of this kind; null where it has more bodies or joints of another kind. */
  static of(linkage: WheelLinkage): OneBodyNewton | null {
    const { origins, constraints } = linkage.mechanism;
    if (origins.length !== 1 || constraints.length !== 5) return null;
    const kinds = constraints.map(kindOf);
    return kinds.includes(null) ? null : new OneBodyNewton(linkage, constraints, kinds as number[]);
  }

  /** As TravelSolver.solveFrom. */
  solve(pose: Pose, target: number, rack: number, drive: Drive): SolveReport {
    const { contact, step } = this;
    const atContact = drive === "contact-height";
    // Every solution begins with the same order, so that none hangs on what was asked before.
    if (this.orderIsNew) this.takeOrder(this.designOrder);
    let last = Number.POSITIVE_INFINITY;
    for (let iterations = 0; ; iterations++) {
      const closure = this.evaluate(pose, rack);
      let off = target - (pose.t[2] as number);
      let c0 = 0;
      let c1 = 0;
      if (atContact) {
        computeContactOffset(this.linkage, pose, contact);
        off -= (contact[2] as number) - (contact[3] as number);
        c0 = contact[0] as number;
        c1 = contact[1] as number;
      }
      const residual = Math.max(closure, Math.abs(off));
      if (!(residual < Number.POSITIVE_INFINITY))
        return { end: "ill-posed", iterations, residual: Number.POSITIVE_INFINITY };
      if (residual <= CLOSURE || (residual >= 0.5 * last && residual <= CLOSURE_PROMISED)) {
        orthonormalise(pose);
        return { end: "converged", iterations, residual };
      }
      if (iterations >= ITERATIONS) return { end: "iteration-limit", iterations, residual };
      const oldFactorsDo = iterations > 0 && 4 * residual * residual <= CLOSURE * last;
      if (!oldFactorsDo && !this.factorise(c0, c1)) return { end: "singular", iterations, residual };
      last = residual;
      this.substitute(off);
      step[2] = off - c1 * (step[3] as number) + c0 * (step[4] as number);
      advancePose(pose, step);
    }
  }

  /** Errors and gradients of the five measures at a pose; returns the largest error, NaN where one is. */
  private evaluate(pose: Pose, rack: number): number {
    const { kinds, arms, fixed, directions, onRack, design, rows, errors } = this;
    const { t, r } = pose;
    const r0 = r[0] as number;
    const r1 = r[1] as number;
    const r2 = r[2] as number;
    const r3 = r[3] as number;
    const r4 = r[4] as number;
    const r5 = r[5] as number;
    const r6 = r[6] as number;
    const r7 = r[7] as number;
    const r8 = r[8] as number;
    const { origins } = this.linkage.mechanism;
    const centre = origins[0] as readonly [number, number, number];
    const cx = centre[0] + (t[0] as number);
    const cy = centre[1] + (t[1] as number);
    const cz = centre[2] + (t[2] as number);
    let worst = 0;
    for (let i = 0; i < 5; i++) {
      const k = 3 * i;
      const px = arms[k] as number;
      const py = arms[k + 1] as number;
      const pz = arms[k + 2] as number;
      const rx = r0 * px + r1 * py + r2 * pz;
      const ry = r3 * px + r4 * py + r5 * pz;
      const rz = r6 * px + r7 * py + r8 * pz;
      const dx = cx + rx - (fixed[k] as number);
      const dy = cy + ry - ((fixed[k + 1] as number) + (onRack[i] as number) * rack);
      const dz = cz + rz - (fixed[k + 2] as number);
      let gx: number;
      let gy: number;
      let gz: number;
      let error: number;
      const o = 6 * i;
      if (kinds[i] === LENGTH) {
        const length = Math.sqrt(dx * dx + dy * dy + dz * dz);
        gx = dx / length;
        gy = dy / length;
        gz = dz / length;
        error = (design[i] as number) - length;
        rows[o + 3] = ry * gz - rz * gy;
        rows[o + 4] = rz * gx - rx * gz;
        rows[o + 5] = rx * gy - ry * gx;
      } else {
        const e0 = directions[k] as number;
        const e1 = directions[k + 1] as number;
        const e2 = directions[k + 2] as number;
        if (kinds[i] === FIXED_OFFSET) {
          gx = e0;
          gy = e1;
          gz = e2;
          error = (design[i] as number) - (gx * dx + gy * dy + gz * dz);
          rows[o + 3] = ry * gz - rz * gy;
          rows[o + 4] = rz * gx - rx * gz;
          rows[o + 5] = rx * gy - ry * gx;
        } else {
          // The knuckle carries E and the point the offset is counted from: m = -E.d, w acts on E and on the point.
          gx = -(r0 * e0 + r1 * e1 + r2 * e2);
          gy = -(r3 * e0 + r4 * e1 + r5 * e2);
          gz = -(r6 * e0 + r7 * e1 + r8 * e2);
          error = (design[i] as number) - (gx * dx + gy * dy + gz * dz);
          const bx = rx - dx;
          const by = ry - dy;
          const bz = rz - dz;
          rows[o + 3] = by * gz - bz * gy;
          rows[o + 4] = bz * gx - bx * gz;
          rows[o + 5] = bx * gy - by * gx;
        }
      }
      rows[o] = gx;
      rows[o + 1] = gy;
      rows[o + 2] = gz;
      errors[i] = error;
      worst = Math.max(worst, Math.abs(error));
    }
    return worst;
  }

  /**
   * Factorises the five by five matrix that is left once the rise is known (c0, c1: how the contact patch's height follows
   * a turn; nought where the wheel centre's is asked for). False where it is singular.
   */
  private factorise(c0: number, c1: number): boolean {
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
  private substitute(off: number): void {
    const { rows, errors, factors, rowOrder, columnOrder, step } = this;
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

/** Which of the three kinds a measure is; null where it is none. */
function kindOf(m: Measure): number | null {
  const [a, b] = [m.a.body === GROUND, m.b.body === GROUND];
  if (a === b || m.b.onRack) return null;
  if (m.kind === "distance") return a ? LENGTH : null;
  if (m.a.onRack) return null;
  if (a && m.carrier === GROUND) return FIXED_OFFSET;
  return b && m.carrier !== GROUND ? CARRIED_OFFSET : null;
}
