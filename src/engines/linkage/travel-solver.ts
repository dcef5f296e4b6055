import { type Factorisation, factorise, makeFactorisation, type SolveReport, solveFactorised } from "#numeric";
import type { WheelLinkage } from "./corner-linkage.ts";
import { MeasureEvaluator } from "./measures.ts";
import { CLOSURE, CLOSURE_PROMISED, ITERATIONS, OneBodyNewton } from "./one-body-newton.ts";
import { advancePose, designPose, orthonormalise, type Pose } from "./pose.ts";
import { computeContactOffset, type Drive } from "./wheel.ts";

/** A pose of the wheel on the branch connected with design. */
export interface TravelState {
  readonly pose: Pose;
  readonly rack: number;
  readonly drive: number;
}

/**
 * Newton on the constraints of one wheel suspension with an analytic Jacobian; every array is made once.
 * Rows: the constraints, then the drive. Unknown: a step (v, w) per body.
 */
export class TravelSolver {
  readonly size: number;
  private readonly factorisation: Factorisation;
  private readonly rows: Float64Array;
  /** What solves a single knuckle; null for any other mechanism. */
  private readonly oneBody: OneBodyNewton | null;
  private readonly evaluator: MeasureEvaluator;
  private readonly design: Float64Array;
  private readonly values: Float64Array;
  private readonly step: Float64Array;
  private readonly contact = new Float64Array(6);
  /** Sign of the Jacobian's determinant at design; it changes only across a fold. */
  private readonly designSign: { "centre-height": number; "contact-height": number };

  constructor(readonly linkage: WheelLinkage) {
    const { mechanism } = linkage;
    const n = 6 * mechanism.origins.length;
    this.size = n;
    this.factorisation = makeFactorisation(n);
    this.rows = new Float64Array(n * n);
    this.evaluator = new MeasureEvaluator(mechanism, mechanism.constraints);
    this.values = new Float64Array(mechanism.constraints.length);
    this.design = new Float64Array(mechanism.constraints.length);
    this.step = new Float64Array(n);
    this.oneBody = OneBodyNewton.of(linkage);
    const start = designPose(mechanism.origins.length);
    this.evaluator.evaluate(start, 0, this.design, this.rows);
    this.designSign = { "centre-height": 0, "contact-height": 0 };
    for (const drive of ["centre-height", "contact-height"] as const) {
      this.assemble(start, 0, drive);
      factorise(this.factorisation);
      this.designSign[drive] = this.factorisation.sign;
    }
  }

  /** The design state. */
  start(): TravelState {
    return { pose: designPose(this.linkage.mechanism.origins.length), rack: 0, drive: 0 };
  }

  /** Fills the Jacobian into the factorisation; returns the largest constraint error in metres. */
  private assemble(pose: Pose, rack: number, drive: Drive): number {
    this.evaluator.evaluate(pose, rack, this.values, this.rows);
    let worst = 0;
    for (let i = 0; i < this.design.length; i++) {
      const e = (this.design[i] as number) - (this.values[i] as number);
      this.step[i] = e;
      worst = Math.max(worst, Math.abs(e));
    }
    this.fillDriveRow(pose, drive);
    const { lu } = this.factorisation;
    for (let i = 0; i < lu.length; i++) lu[i] = this.rows[i] as number;
    return worst;
  }

  /** The last row: height of the wheel centre (v_z) or of the lowest point of the wheel. */
  private fillDriveRow(pose: Pose, drive: Drive): void {
    const o = this.size * (this.size - 1);
    for (let j = o; j < this.rows.length; j++) this.rows[j] = 0;
    this.rows[o + 2] = 1;
    if (drive === "contact-height") {
      const c = computeContactOffset(this.linkage, pose, this.contact);
      this.rows[o + 3] = c[1] as number;
      this.rows[o + 4] = -(c[0] as number);
    }
  }

  /** Gradient of the drive value at a pose; the array is reused by the next call. */
  driveRow(pose: Pose, drive: Drive): Float64Array {
    this.fillDriveRow(pose, drive);
    return this.rows.subarray(this.size * (this.size - 1), this.size * this.size);
  }

  /** Height of the wheel centre or of the contact patch above design, metres. */
  driveValue(pose: Pose, drive: Drive): number {
    if (drive === "centre-height") return pose.t[2] as number;
    const c = computeContactOffset(this.linkage, pose, this.contact);
    return (pose.t[2] as number) + (c[2] as number) - (c[3] as number);
  }

  /**
   * Newton from `pose` (changed in place) to the given drive value and rack position.
   * The residual of the report is the largest closure in metres. At any end but "converged" the pose holds the last
   * iterate.
   */
  solveFrom(pose: Pose, target: number, rack: number, drive: Drive): SolveReport {
    if (this.oneBody) return this.oneBody.solve(pose, target, rack, drive);
    const n = this.size;
    let last = Number.POSITIVE_INFINITY;
    for (let iteration = 0; ; iteration++) {
      const closure = this.assemble(pose, rack, drive);
      const off = target - this.driveValue(pose, drive);
      this.step[n - 1] = off;
      const residual = Math.max(closure, Math.abs(off));
      if (!factorise(this.factorisation)) return { end: "singular", iterations: iteration, residual };
      if (!Number.isFinite(residual))
        return { end: "ill-posed", iterations: iteration, residual: Number.POSITIVE_INFINITY };
      const stalled = residual >= 0.5 * last && residual <= CLOSURE_PROMISED;
      if (residual <= CLOSURE || stalled) {
        orthonormalise(pose);
        return { end: "converged", iterations: iteration, residual };
      }
      if (iteration >= ITERATIONS) return { end: "iteration-limit", iterations: iteration, residual };
      last = residual;
      solveFactorised(this.factorisation, this.step);
      advancePose(pose, this.step);
    }
  }

  /** Whether a pose lies on the same side of every fold as design: the sign of the Jacobian's determinant is the same. */
  isOnDesignSide(pose: Pose, rack: number, drive: Drive): boolean {
    this.assemble(pose, rack, drive);
    factorise(this.factorisation);
    return this.factorisation.sign === this.designSign[drive];
  }

  /** The constraint gradients at a pose with an empty last row, row-major; a copy. */
  jacobian(pose: Pose, rack: number): Float64Array {
    this.evaluator.evaluate(pose, rack, this.values, this.rows);
    const out = this.rows.slice();
    out.fill(0, this.size * (this.size - 1));
    return out;
  }

  /**
   * Right-hand side of a rack movement of 1: minus the derivative of each constraint by the rack, last entry 0.
   * With `link` named, that link's inner joint moves instead of the steered ones (a thought experiment on a rear axle).
   */
  steerRates(pose: Pose, rack: number, link: string | null): Float64Array {
    const { mechanism } = this.linkage;
    const moved =
      link === null
        ? mechanism
        : {
            ...mechanism,
            constraints: mechanism.constraints.map((m) =>
              m.joint === link && m.kind === "distance" ? { ...m, a: { ...m.a, onRack: true } } : m,
            ),
          };
    new MeasureEvaluator(moved, moved.constraints).rackRates(pose, rack, this.values);
    const out = new Float64Array(this.size);
    for (let i = 0; i < this.design.length; i++) out[i] = -(this.values[i] as number);
    return out;
  }

  /** Largest constraint error at a pose, metres. */
  closure(pose: Pose, rack: number): number {
    this.evaluator.evaluate(pose, rack, this.values, this.rows);
    let worst = 0;
    for (let i = 0; i < this.design.length; i++)
      worst = Math.max(worst, Math.abs((this.values[i] as number) - (this.design[i] as number)));
    return worst;
  }
}
