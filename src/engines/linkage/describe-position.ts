import { factorise, makeFactorisation, type SolveReport, solveFactorised, type Vector } from "#numeric";
import type { Pose } from "./pose.ts";
import type { TravelSolver, TravelState } from "./travel-solver.ts";
import {
  computeAttitude,
  computeAttitudeRates,
  computeFrontViewCentre,
  computeRollCentre,
  computeSideViewCentre,
  computeSteeringAxis,
  type Screw,
  type SteeringAxis,
  velocityAt,
  type WheelAttitude,
} from "./wheel-figures.ts";

/** Everything the rigid linkage says of one position; SI, radians, left side, rates per metre of wheel-centre rise. */
export interface TravelPosition {
  readonly pose: Pose;
  readonly attitude: WheelAttitude;
  readonly screw: Screw;
  readonly camberGain: number;
  readonly toeGain: number;
  readonly spinGain: number;
  readonly frontViewCentre: readonly [number, number] | null;
  readonly sideViewCentre: readonly [number, number] | null;
  readonly rollCentreMigrating: number;
  readonly rollCentreConstruction: number;
  /** v_x/v_z of the knuckle-fixed point at the contact patch, and of the wheel centre. */
  readonly brakeSlope: number;
  readonly driveSlope: number;
  /** Fall of the spring or damper length per rise of the wheel centre; null where there is none. */
  readonly springRatio: number | null;
  readonly damperRatio: number | null;
  readonly springLength: number | null;
  readonly damperLength: number | null;
  /** With the spring length held (where there is a spring) and with the wheel-centre height held. */
  readonly steering: { readonly springHeld: SteeringAxis | null; readonly heightHeld: SteeringAxis | null } | null;
  readonly closure: number;
  readonly report: SolveReport;
}

/** Length of a spring or damper at a pose, with its gradient by the steps of all bodies. */
export interface LengthAtPose {
  readonly length: number;
  readonly row: readonly number[];
}

/** What is read off a pose beside the wheel. */
export interface Attached {
  readonly spring: LengthAtPose | null;
  readonly damper: LengthAtPose | null;
  /** Right-hand side of a rack movement (TravelSolver.steerRates); null where nothing steers the wheel. */
  readonly steerRates: Float64Array | null;
}

const RISE: readonly number[] = [0, 0, 1, 0, 0, 0];

/** All figures of a solved position; null where the wheel centre cannot rise from it (exactly at a fold). */
export function describePosition(
  solver: TravelSolver,
  state: TravelState,
  report: SolveReport,
  { spring, damper, steerRates }: Attached,
): TravelPosition | null {
  const closure = solver.closure(state.pose, state.rack);
  const jacobian = solver.jacobian(state.pose, state.rack);
  const step = solveHeld(jacobian, solver.size, RISE, null);
  if (!step) return null;
  const screw = screwOf(step);
  const radius = solver.linkage.wheel.loadedRadius;
  const attitude = computeAttitude(solver.linkage, state.pose);
  const rates = computeAttitudeRates(attitude, screw, radius);
  const roll = computeRollCentre(attitude, screw, radius);
  const fixed = velocityAt(attitude, screw, attitude.contact);
  const axis = (holdRow: readonly number[]): SteeringAxis | null => {
    const steer = steerRates && solveHeld(jacobian, solver.size, holdRow, steerRates);
    return steer && computeSteeringAxis(attitude, screwOf(steer), radius);
  };
  return {
    pose: state.pose,
    attitude,
    screw,
    camberGain: rates.camber,
    toeGain: rates.toe,
    spinGain: rates.spin,
    frontViewCentre: computeFrontViewCentre(attitude, screw, attitude.contact),
    sideViewCentre: computeSideViewCentre(attitude, screw, attitude.contact),
    rollCentreMigrating: roll.migrating,
    rollCentreConstruction: roll.construction,
    brakeSlope: fixed[0] / fixed[2],
    driveSlope: screw.v[0] / screw.v[2],
    springRatio: spring && -along(spring.row, step),
    damperRatio: damper && -along(damper.row, step),
    springLength: spring?.length ?? null,
    damperLength: damper?.length ?? null,
    steering: steerRates && { springHeld: spring && axis(spring.row), heightHeld: axis(RISE) },
    closure,
    report,
  };
}

/** Below this ratio of pivots a row counts as holding nothing: rounding of the others. */
const NOTHING_HELD = 1e-13;

/**
 * Steps of all bodies with the constraints of `jacobian` and one more row (its first columns given, nought beyond): rate 1
 * on it, or the given rates. Null where that row holds nothing (a spring that the wheel does not move).
 */
function solveHeld(
  jacobian: Float64Array,
  n: number,
  row: readonly number[],
  rates: Float64Array | null,
): Float64Array | null {
  const f = makeFactorisation(n);
  f.lu.set(jacobian);
  f.lu.fill(0, n * (n - 1));
  f.lu.set(row, n * (n - 1));
  const x = new Float64Array(n);
  if (rates) x.set(rates);
  else x[n - 1] = 1;
  if (!factorise(f) || f.pivotRatio < NOTHING_HELD) return null;
  solveFactorised(f, x);
  return x;
}

/** The motion of the wheel among the steps of all bodies. */
function screwOf(x: Float64Array): Screw {
  const at = (i: number): number => x[i] as number;
  return { v: [at(0), at(1), at(2)] as Vector, w: [at(3), at(4), at(5)] as Vector };
}

function along(row: readonly number[], step: Float64Array): number {
  return row.reduce((sum, g, i) => sum + g * (step[i] as number), 0);
}
