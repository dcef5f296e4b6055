import type { SolveReport, Vector } from "#numeric";
import { factorise, makeFactorisation, solveFactorised } from "#numeric";
import { buildCornerLinkage, type CornerLinkage } from "./corner-linkage.ts";
import type { CornerGeometry, SpringGeometry } from "./geometry.ts";
import type { Pose } from "./pose.ts";
import { computeSeatLength, seatRow } from "./seat.ts";
import { findBinding, traceTo } from "./trace.ts";
import { type Drive, TravelSolver, type TravelState } from "./travel-solver.ts";
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

/** How far the wheel is asked to move: the drive value and the rack position, metres. */
export interface TravelStep {
  readonly travel: number;
  readonly rack: number;
}

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

export type TravelAnswer = TravelPosition | { readonly foldAt: number; readonly on: Drive | "rack" };

/** Travel and rack sweeps of one corner: keeps the last states so that neighbouring questions start close. */
export class TravelSweep {
  readonly linkage: CornerLinkage;
  readonly solver: TravelSolver;
  /** Name of the link by which the wheel is steered, or of the one a thought experiment steers with. */
  private readonly steerRates: Float64Array;

  constructor(
    readonly geometry: CornerGeometry,
    private readonly drive: Drive = "centre-height",
    private readonly steerLink: string | null = null,
  ) {
    this.linkage = buildCornerLinkage(geometry);
    this.solver = new TravelSolver(this.linkage);
    this.steerRates = new Float64Array(this.solver.size);
  }

  /** Solves one step from design; a position, or where the branch ends. */
  solve(step: TravelStep): TravelAnswer {
    const result = traceTo(this.solver, this.solver.start(), step.travel, step.rack, this.drive);
    if (!result.reached) return { foldAt: result.foldAt, on: result.drive };
    return this.describe(result.state, result.report);
  }

  /** Where the branch ends within `reach` metres of wheel-centre travel either side, rack at rest. */
  findBinding(reach: number): { low: number | null; high: number | null } {
    return findBinding(this.solver, reach);
  }

  private describe(state: TravelState, report: SolveReport): TravelAnswer {
    const { solver, linkage, geometry } = this;
    const closure = solver.closure(state.pose, state.rack);
    const jacobian = solver.jacobian(state.pose, state.rack);
    const screw = solveHeld(jacobian, solver.size, [0, 0, 1, 0, 0, 0], null);
    if (!screw) return { foldAt: state.drive, on: this.drive };
    const radius = geometry.wheel.loadedRadius;
    const attitude = computeAttitude(linkage, state.pose);
    const rates = computeAttitudeRates(attitude, screw, radius);
    const roll = computeRollCentre(attitude, screw, radius);
    const fixed = velocityAt(attitude, screw, attitude.contact);
    const ratio = (spring: SpringGeometry | undefined): { ratio: number; length: number } | null => {
      if (!spring) return null;
      const seat = computeSeatLength(geometry, spring, state.pose);
      const row = seatRow(seat);
      return { ratio: -along(row, screw), length: seat.length };
    };
    const spring = ratio(geometry.spring);
    const damper = ratio(geometry.damper);
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
      springRatio: spring?.ratio ?? null,
      damperRatio: damper?.ratio ?? null,
      springLength: spring?.length ?? null,
      damperLength: damper?.length ?? null,
      steering: this.describeSteering(state, jacobian, attitude),
      closure,
      report,
    };
  }

  private describeSteering(
    state: TravelState,
    jacobian: Float64Array,
    attitude: WheelAttitude,
  ): TravelPosition["steering"] {
    const { solver, geometry } = this;
    if (!geometry.links.some((l) => l.steered) && this.steerLink === null) return null;
    this.steerRates.set(solver.steerRates(state.pose, state.rack, this.steerLink));
    const axis = (holdRow: readonly number[]): SteeringAxis | null => {
      const steer = solveHeld(jacobian, solver.size, holdRow, this.steerRates);
      return steer && computeSteeringAxis(attitude, steer, geometry.wheel.loadedRadius);
    };
    return {
      springHeld: geometry.spring ? axis(seatRow(computeSeatLength(geometry, geometry.spring, state.pose))) : null,
      heightHeld: axis([0, 0, 1, 0, 0, 0]),
    };
  }
}

/** Below this ratio of pivots a row counts as holding nothing: rounding of the others. */
const NOTHING_HELD = 1e-13;

/**
 * Screw of the knuckle with the constraints of `jacobian` and one more row: rate 1 on it, or the given rates.
 * Null where that row holds nothing (a spring that the wheel does not move).
 */
function solveHeld(
  jacobian: Float64Array,
  n: number,
  row: readonly number[],
  rates: Float64Array | null,
): Screw | null {
  const f = makeFactorisation(n);
  f.lu.set(jacobian);
  f.lu.fill(0, n * (n - 1));
  f.lu.set(row, n * (n - 1));
  const x = new Float64Array(n);
  if (rates) x.set(rates);
  else x[n - 1] = 1;
  if (!factorise(f) || f.pivotRatio < NOTHING_HELD) return null;
  solveFactorised(f, x);
  const at = (i: number): number => x[i] as number;
  return { v: [at(0), at(1), at(2)] as Vector, w: [at(3), at(4), at(5)] as Vector };
}

function along(row: readonly number[], screw: Screw): number {
  const s = [...screw.v, ...screw.w];
  return row.reduce((sum, g, i) => sum + g * (s[i] as number), 0);
}
