import { factorise, makeFactorisation, type SolveReport, solveFactorised } from "#numeric";
import { MeasureEvaluator } from "./measures.ts";
import { advancePose, clonePose, copyPose, type Pose } from "./pose.ts";
import type { TravelSolver, TravelState } from "./travel-solver.ts";
import type { Drive } from "./wheel.ts";

/** How a walk along the branch ended: at its target, or at a fold beyond which the branch does not go. */
export type TraceResult =
  | { readonly reached: true; readonly state: TravelState; readonly report: SolveReport }
  | { readonly reached: false; readonly foldAt: number; readonly foldPose: Pose; readonly drive: Drive | "rack" };

/** Largest step of the walk, metres; an ordinary corner changes smoothly over it. */
const STEP = 0.01;
/** Steps of the drive are halved down to this before the walk changes to arc length. */
const LEAST_STEP = 1e-4;
/** Steps of the rack are halved down to this: how closely its end is found. */
const LEAST_RACK_STEP = 1e-9;
/** A pose found by Newton turned by more than this (rad) from its starting point lies on another branch. */
const NEAR_TURN = 0.05;
/** Length that makes a radian comparable with a metre in the arc length. */
const ARM = 0.3;

/**
 * Walks along the branch connected with design: first the rack, at the starting drive, then the drive.
 * Each step starts from the tangent and must land on the same side of every fold (sign of the determinant);
 * where it cannot, the fold is located by arc length within about 1e-9 m.
 */
export function traceTo(
  solver: TravelSolver,
  from: TravelState,
  target: number,
  rack: number,
  drive: Drive,
): TraceResult {
  const pose = clonePose(from.pose);
  const onRack = walk(solver, pose, from.rack, rack, (rack) => ({ target: from.drive, rack }), drive, LEAST_RACK_STEP);
  if (onRack !== null) {
    // A rack position that is out of reach at ride height may be within reach at the asked one.
    const other = clonePose(from.pose);
    const there = walk(solver, other, from.drive, target, (target) => ({ target, rack: from.rack }), drive);
    const steered =
      there === null
        ? walk(solver, other, from.rack, rack, (rack) => ({ target, rack }), drive, LEAST_RACK_STEP)
        : there;
    if (steered !== null) return { reached: false, foldAt: onRack.lastGood, foldPose: pose, drive: "rack" };
    const report = solver.solveFrom(other, target, rack, drive);
    return { reached: true, state: { pose: other, rack, drive: target }, report };
  }
  const failed = walk(solver, pose, from.drive, target, (target) => ({ target, rack }), drive);
  if (failed === null) {
    const report = solver.solveFrom(pose, target, rack, drive);
    return { reached: true, state: { pose, rack, drive: target }, report };
  }
  const followed = followByArc(solver, pose, rack, drive, target, Math.sign(target - from.drive));
  if (followed.fold) return { reached: false, foldAt: followed.at, foldPose: followed.pose, drive };
  const report = solver.solveFrom(followed.pose, target, rack, drive);
  return { reached: true, state: { pose: followed.pose, rack, drive: target }, report };
}

/** Steps `value` from `start` to `target`; null when it got there, else the last value that was reached. */
function walk(
  solver: TravelSolver,
  pose: Pose,
  start: number,
  target: number,
  place: (value: number) => { readonly target: number; readonly rack: number },
  drive: Drive,
  least = LEAST_STEP,
): { lastGood: number } | null {
  let at = start;
  let step = Math.sign(target - start) * STEP;
  const before = clonePose(pose);
  const trial = clonePose(pose);
  while (at !== target) {
    const next = Math.abs(target - at) <= Math.abs(step) ? target : at + step;
    copyPose(pose, trial);
    const { target: height, rack } = place(next);
    const report = solver.solveFrom(trial, height, rack, drive);
    const turned = rotationBetween(pose, trial);
    const good =
      report.end === "converged" &&
      solver.isOnDesignSide(trial, rack, drive) &&
      turned < 12 * Math.abs(next - at) + 1e-6 + 0.02;
    if (good) {
      copyPose(pose, before);
      copyPose(trial, pose);
      at = next;
      if (Math.abs(step) < STEP) step *= 2;
    } else {
      step /= 2;
      if (Math.abs(step) < least) return { lastGood: at };
    }
  }
  return null;
}

/** Largest difference of two poses' rotation entries: the angle between them while it is small. */
function rotationBetween(a: Pose, b: Pose): number {
  let worst = 0;
  for (let i = 0; i < a.r.length; i++) worst = Math.max(worst, Math.abs((a.r[i] as number) - (b.r[i] as number)));
  return worst;
}

/**
 * Follows the branch by arc length from a good pose, where steps of the drive have become too fine: to the target, or
 * to the fold before it. Arc length: constraints plus the plane across the tangent; the fold is where the drive's rate
 * along the tangent vanishes, found by bisection on the arc length.
 */
function followByArc(
  solver: TravelSolver,
  good: Pose,
  rack: number,
  drive: Drive,
  target: number,
  direction: number,
): { readonly fold: boolean; readonly at: number; readonly pose: Pose } {
  const arc = new ArcWalk(solver, rack, drive);
  const tangent = arc.tangent(good, null);
  if (arc.driveRate(good, tangent) * direction < 0)
    for (let i = 0; i < tangent.length; i++) tangent[i] = -(tangent[i] as number);
  let pose = clonePose(good);
  let along = tangent;
  let length = 2e-4;
  for (let i = 0; i < 400; i++) {
    const ahead = arc.advance(pose, along, length);
    if (ahead === null) {
      length /= 2;
      if (length < 1e-12) break;
      continue;
    }
    if ((arc.driveValue(ahead) - target) * direction >= 0) {
      const there = clonePose(ahead);
      const { end } = solver.solveFrom(there, target, rack, drive);
      const near = end === "converged" && rotationBetween(ahead, there) < NEAR_TURN;
      if (near && solver.isOnDesignSide(there, rack, drive)) return { fold: false, at: target, pose: there };
      length /= 2;
      if (length < 1e-12) break;
      continue;
    }
    const nextTangent = arc.tangent(ahead, along);
    if (arc.driveRate(ahead, nextTangent) * direction > 0) {
      pose = ahead;
      along = nextTangent;
      length = Math.min(length * 1.5, 5e-3);
    } else {
      if (length < 1e-8) break;
      length /= 2;
    }
  }
  return { fold: true, at: arc.driveValue(pose), pose };
}

/** One-dimensional branch of the constraints followed by arc length. */
class ArcWalk {
  private readonly n: number;
  private readonly evaluator: MeasureEvaluator;
  private readonly values: Float64Array;
  private readonly rows: Float64Array;
  private readonly design: Float64Array;
  private readonly factorisation;

  constructor(
    private readonly solver: TravelSolver,
    private readonly rack: number,
    private readonly drive: Drive,
  ) {
    const { mechanism } = solver.linkage;
    this.n = solver.size;
    this.evaluator = new MeasureEvaluator(mechanism, mechanism.constraints);
    this.values = new Float64Array(this.n - 1);
    this.design = new Float64Array(this.n - 1);
    this.rows = new Float64Array(this.n * this.n);
    this.factorisation = makeFactorisation(this.n);
    this.evaluator.evaluate(solver.start().pose, 0, this.design, this.rows);
  }

  /** Unit tangent (angles weighted by ARM), continuing `previous` where one is given. */
  tangent(pose: Pose, previous: Float64Array | null): Float64Array {
    const n = this.n;
    this.evaluator.evaluate(pose, this.rack, this.values, this.rows);
    const out = new Float64Array(n);
    const guides = previous
      ? [previous]
      : [this.unit(2), this.unit(3), this.unit(4), this.unit(5), this.unit(0), this.unit(1)];
    for (const guide of guides) {
      for (let j = 0; j < n; j++) this.rows[(n - 1) * n + j] = (guide[j] as number) * weight(j) * weight(j);
      this.factorisation.lu.set(this.rows);
      if (!factorise(this.factorisation) || this.factorisation.pivotRatio < 1e-12) continue;
      out.fill(0);
      out[n - 1] = 1;
      solveFactorised(this.factorisation, out);
      break;
    }
    let length = 0;
    for (let j = 0; j < n; j++) length += ((out[j] as number) * weight(j)) ** 2;
    length = Math.sqrt(length);
    for (let j = 0; j < n; j++) out[j] = (out[j] as number) / length;
    return out;
  }

  /** The pose at `length` further along the tangent, or null where Newton does not settle. */
  advance(pose: Pose, tangent: Float64Array, length: number): Pose | null {
    const n = this.n;
    const next = clonePose(pose);
    advancePose(next, tangent, length);
    const step = new Float64Array(n);
    for (let iteration = 0; iteration < 12; iteration++) {
      this.evaluator.evaluate(next, this.rack, this.values, this.rows);
      let worst = 0;
      for (let i = 0; i < n - 1; i++) {
        step[i] = (this.design[i] as number) - (this.values[i] as number);
        worst = Math.max(worst, Math.abs(step[i] as number));
      }
      // The plane across the tangent is kept: corrections have no part along it.
      step[n - 1] = 0;
      if (worst < 1e-14) return next;
      for (let j = 0; j < n; j++) this.rows[(n - 1) * n + j] = (tangent[j] as number) * weight(j) * weight(j);
      this.factorisation.lu.set(this.rows);
      if (!factorise(this.factorisation)) return null;
      solveFactorised(this.factorisation, step);
      advancePose(next, step);
    }
    return null;
  }

  driveRate(pose: Pose, tangent: Float64Array): number {
    return this.solver.driveRow(pose, this.drive).reduce((sum, g, j) => sum + g * (tangent[j] as number), 0);
  }

  driveValue(pose: Pose): number {
    return this.solver.driveValue(pose, this.drive);
  }

  private unit(j: number): Float64Array {
    const out = new Float64Array(this.n);
    out[j] = 1;
    return out;
  }
}

/** Weight of column j in the arc length: 1 for shifts, ARM for turns. */
function weight(j: number): number {
  return j % 6 < 3 ? 1 : ARM;
}
