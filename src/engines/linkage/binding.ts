import { factorise, makeFactorisation, solveFactorised, solveFactorisedTransposed } from "#numeric";
import type { Pose } from "./pose.ts";
import { type TraceResult, traceTo } from "./trace.ts";
import type { TravelSolver, TravelState } from "./travel-solver.ts";
import type { Drive } from "./wheel.ts";

/** A joint that locks where the travel ends, and how much of the largest of their forces it takes: 0 to 1. */
export interface BindingJoint {
  readonly joint: string;
  readonly share: number;
}

/** Where a branch ends: the wheel-centre travel, and the joints whose forces grow without bound there, largest first. */
export interface BranchEnd {
  readonly at: number;
  readonly joints: readonly BindingJoint[];
}

/** Where a step was not reached: at a travel or, on "rack", at a rack position (metres), and what locks there. */
export interface TravelFold {
  readonly foldAt: number;
  readonly on: Drive | "rack";
  readonly joints: readonly BindingJoint[];
}

/** What stopped a walk to a step of this rack position. */
export function describeFold(
  solver: TravelSolver,
  fold: Extract<TraceResult, { readonly reached: false }>,
  rack: number,
  drive: Drive,
): TravelFold {
  const at = fold.drive === "rack" ? fold.foldAt : rack;
  return { foldAt: fold.foldAt, on: fold.drive, joints: findBindingJoints(solver, fold.foldPose, at, drive) };
}

/** A position that was reached but has no rates: it lies on the fold itself. */
export const foldHere = (solver: TravelSolver, { pose, rack, drive }: TravelState, on: Drive): TravelFold => ({
  foldAt: drive,
  on,
  joints: findBindingJoints(solver, pose, rack, on),
});

/** Joints that take less than this of the largest force are left out: they only guide. */
const LEAST_SHARE = 0.05;

/**
 * Ends of the branch within `reach` metres of wheel-centre travel either side of design, rack at rest; null on a side
 * where nothing binds.
 */
export function findEnds(
  solver: TravelSolver,
  reach: number,
): { readonly low: BranchEnd | null; readonly high: BranchEnd | null } {
  const end = (target: number): BranchEnd | null => {
    const result = traceTo(solver, solver.start(), target, 0, "centre-height");
    if (result.reached) return null;
    return { at: result.foldAt, joints: findBindingJoints(solver, result.foldPose, 0, "centre-height") };
  };
  return { low: end(-reach), high: end(reach) };
}

/** Rounds of the search for the forces that lock: each brings them nearer by the square of how singular J is. */
const ROUNDS = 3;

/**
 * What stops the wheel at a fold. There J is singular, and the forces in balance with each other alone, its left null
 * direction, grow without bound: found by inverse iteration on J J^T, so that it does not matter along what the wheel still
 * moves. Components of one joint are taken together.
 */
export function findBindingJoints(solver: TravelSolver, pose: Pose, rack: number, drive: Drive): BindingJoint[] {
  const n = solver.size;
  const f = makeFactorisation(n);
  f.lu.set(solver.jacobian(pose, rack));
  f.lu.set(solver.driveRow(pose, drive), n * (n - 1));
  // Uneven, so that no balance of a symmetric corner is at right angles to it.
  const forces = Float64Array.from({ length: n }, (_, i) => 1 / (i + 1));
  if (!factorise(f)) return [];
  for (let round = 0; round < ROUNDS; round++) {
    solveFactorised(f, forces);
    solveFactorisedTransposed(f, forces);
    const length = Math.hypot(...forces);
    if (!(length > 0 && length < Number.POSITIVE_INFINITY)) return [];
    for (let i = 0; i < n; i++) forces[i] = (forces[i] as number) / length;
  }
  const sums = new Map<string, number>();
  solver.linkage.mechanism.constraints.forEach(({ joint }, i) => {
    sums.set(joint, Math.hypot(sums.get(joint) ?? 0, forces[i] as number));
  });
  const most = Math.max(...sums.values());
  return [...sums]
    .map(([joint, force]) => ({ joint, share: force / most }))
    .filter(({ share }) => share >= LEAST_SHARE)
    .sort((a, b) => b.share - a.share);
}
