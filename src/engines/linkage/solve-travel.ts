import type { SolveReport } from "#numeric";
import { type BranchEnd, describeFold, findEnds, foldHere, type TravelFold } from "./binding.ts";
import { buildCornerLinkage, type CornerLinkage } from "./corner-linkage.ts";
import { describePosition, type LengthAtPose, type TravelPosition } from "./describe-position.ts";
import type { CornerGeometry, SpringGeometry } from "./geometry.ts";
import { computeSeatLength, seatRow } from "./seat.ts";
import { traceTo } from "./trace.ts";
import { TravelSolver, type TravelState } from "./travel-solver.ts";
import type { Drive } from "./wheel.ts";

/** How far the wheel is asked to move: the drive value and the rack position, metres. */
export interface TravelStep {
  readonly travel: number;
  readonly rack: number;
}

export type TravelAnswer = TravelPosition | TravelFold;

/** Travel and rack sweeps of one corner: keeps the last states so that neighbouring questions start close. */
export class TravelSweep {
  readonly linkage: CornerLinkage;
  readonly solver: TravelSolver;

  constructor(
    readonly geometry: CornerGeometry,
    private readonly drive: Drive = "centre-height",
    /** The link that a thought experiment steers with; null: by the steered ones. */
    private readonly steerLink: string | null = null,
  ) {
    this.linkage = buildCornerLinkage(geometry);
    this.solver = new TravelSolver(this.linkage);
  }

  /** Solves one step from design; a position, or where the branch ends. */
  solve(step: TravelStep): TravelAnswer {
    const result = traceTo(this.solver, this.solver.start(), step.travel, step.rack, this.drive);
    if (!result.reached) return describeFold(this.solver, result, step.rack, this.drive);
    return this.describe(result.state, result.report);
  }

  /** Where the branch ends within `reach` metres of wheel-centre travel either side, rack at rest, and in which joints. */
  findEnds(reach: number): { readonly low: BranchEnd | null; readonly high: BranchEnd | null } {
    return findEnds(this.solver, reach);
  }

  private describe(state: TravelState, report: SolveReport): TravelAnswer {
    const { solver, geometry } = this;
    const lengthOf = (spring: SpringGeometry | undefined): LengthAtPose | null => {
      if (!spring) return null;
      const seat = computeSeatLength(geometry, spring, state.pose);
      return { length: seat.length, row: seatRow(seat) };
    };
    const steers = geometry.links.some((l) => l.steered) || this.steerLink !== null;
    const position = describePosition(solver, state, report, {
      spring: lengthOf(geometry.spring),
      damper: lengthOf(geometry.damper),
      steerRates: steers ? solver.steerRates(state.pose, state.rack, this.steerLink) : null,
    });
    return position ?? foldHere(solver, state, this.drive);
  }
}
