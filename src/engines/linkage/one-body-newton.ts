import type { SolveReport } from "#numeric";
import type { WheelLinkage } from "./corner-linkage.ts";
import { designTriad, GROUND, type Measure } from "./mechanism.ts";
import { OrderedElimination } from "./ordered-elimination.ts";
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
  private readonly centre: readonly [number, number, number];
  /** Knuckle point of each measure from the wheel centre at design, its body point, its direction (offsets). */
  private readonly arms = new Float64Array(15);
  private readonly fixed = new Float64Array(15);
  private readonly directions = new Float64Array(15);
  private readonly onRack = new Float64Array(5);
  private readonly design = new Float64Array(5);
  private readonly elimination = new OrderedElimination();
  private readonly contact = new Float64Array(6);
  private readonly step = new Float64Array(6);

  private constructor(
    private readonly linkage: WheelLinkage,
    measures: readonly Measure[],
    kinds: readonly number[],
  ) {
    const { points, origins } = linkage.mechanism;
    const centre = origins[0] as readonly [number, number, number];
    this.centre = centre;
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
    for (let i = 0; i < 5; i++) this.design[i] = -(this.elimination.errors[i] as number);
    this.elimination.chooseFirstOrder();
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
    const { contact, step, elimination } = this;
    const atContact = drive === "contact-height";
    elimination.returnToFirstOrder();
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
      if (!oldFactorsDo && !elimination.factorise(c0, c1)) return { end: "singular", iterations, residual };
      last = residual;
      elimination.substitute(off, step);
      step[2] = off - c1 * (step[3] as number) + c0 * (step[4] as number);
      advancePose(pose, step);
    }
  }

  /** Errors and gradients of the five measures at a pose; returns the largest error, NaN where one is. */
  private evaluate(pose: Pose, rack: number): number {
    const { kinds, arms, fixed, directions, onRack, design } = this;
    const { rows, errors } = this.elimination;
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
    const { centre } = this;
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
