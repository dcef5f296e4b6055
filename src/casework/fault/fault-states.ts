import {
  type CornerLoad,
  type ElasticFault,
  type ElasticState,
  FaultBand,
  NO_LOAD,
  type StateBand,
  type UncertainNumbers,
  type WheelBand,
  type WheelState,
} from "#engines/linkage";
import type { Jet } from "#numeric";
import type { Condition } from "../fault-effect.ts";
import type { CornerModel } from "./corner-model.ts";

/** One state of repair of a corner, asked at many heights: poses, and their derivatives where a band is wanted. */
export interface RepairState {
  readonly band: { readonly jets: UncertainNumbers };
  /** False where the joints cannot carry the wheel load: nothing can be computed then. */
  readonly carries: boolean;
  /** All balances under a load, the one on the healthy side first; null where none is found. */
  solve(load: CornerLoad): SolvedState | null;
  /** Toe, camber and place with derivatives at a load; null where no balance is found. */
  bandAt(load: CornerLoad): WheelBand | null;
  /** The corner with its loose members held on one side of their play, each way; empty where they have no two sides. */
  sidesAt(load: CornerLoad): readonly WheelBand[];
  /** Starts the next question from design again. */
  forget(): void;
}

/** What was found at a load. */
export interface SolvedState<State extends WheelState = WheelState> {
  readonly state: State;
  readonly others: readonly State[];
  /** Its toe, camber and place with derivatives; null where the stiffness is singular. */
  readonly band: () => WheelBand | null;
  /** How far each loose member stands from leaving its side of the play, positive while it holds; empty without play. */
  readonly reserves: () => readonly Jet[];
}

/** A corner with one knuckle with given faults. */
export class CornerState implements RepairState {
  readonly band: FaultBand;
  private near: ElasticState | null = null;

  constructor(model: CornerModel, faults: readonly ElasticFault[]) {
    const { geometry, elasticity, deviations, rates, correlations } = model;
    const corner = { geometry, elasticity, hold: "contact-height" as const, faults: [...faults] };
    this.band = new FaultBand(corner, deviations, rates, correlations);
  }

  get carries(): boolean {
    return this.band.solver.carries;
  }

  solve(load: CornerLoad): SolvedState<ElasticState> | null {
    const answer = this.band.solver.solve(load, this.near);
    if (!("state" in answer)) return null;
    const { state, others } = answer;
    this.near = state;
    return {
      state,
      others,
      band: () => this.band.bandAt(state, load),
      reserves: () => this.band.branchReserves(state, load),
    };
  }

  bandAt(load: CornerLoad): StateBand | null {
    const answer = this.solve(load);
    return answer ? this.band.bandAt(answer.state, load) : null;
  }

  sidesAt(load: CornerLoad): readonly StateBand[] {
    return this.band.solver.solveSidesOfPlay(load).flatMap((side) => this.band.bandAt(side, load) ?? []);
  }

  forget(): void {
    this.near = null;
  }
}

/** A condition as loads on the left-hand model: what pushes a right wheel left pushes its mirror image right. */
export function loadOf(condition: Condition, mirrored: boolean): CornerLoad {
  const turn = mirrored ? -1 : 1;
  return {
    lateral: turn * condition.lateral,
    braking: condition.braking,
    drive: condition.drive,
    aligning: 0,
    contactRise: condition.contactRise,
    rack: turn * condition.rack,
  };
}

/** The same height and rack without any force. */
export const unloaded = (load: CornerLoad): CornerLoad => ({
  ...NO_LOAD,
  contactRise: load.contactRise,
  rack: load.rack,
});
