import type { BodyLayout } from "#vehicle";
import { type BranchEnd, describeFold, findEnds, foldHere } from "./binding.ts";
import { describePosition, type LengthAtPose } from "./describe-position.ts";
import { computeWheelGradients, type WheelGradient } from "./gradients.ts";
import { buildLayoutLinkage, type LayoutLinkage } from "./layout-linkage.ts";
import { MeasureEvaluator } from "./measures.ts";
import type { Measure } from "./mechanism.ts";
import type { Pose } from "./pose.ts";
import type { TravelAnswer, TravelStep } from "./solve-travel.ts";
import { traceTo } from "./trace.ts";
import { TravelSolver } from "./travel-solver.ts";
import type { Drive } from "./wheel.ts";

/** Travel and rack sweeps of a suspension given as bodies and joints; the same solver as a corner's. */
export class LayoutSweep {
  readonly linkage: LayoutLinkage;
  readonly solver: TravelSolver;

  constructor(
    readonly layout: BodyLayout,
    private readonly drive: Drive = "centre-height",
  ) {
    this.linkage = buildLayoutLinkage(layout);
    this.solver = new TravelSolver(this.linkage);
  }

  /** Solves one step from design (metres); a position, or where the branch ends. */
  solve(step: TravelStep): TravelAnswer {
    const result = traceTo(this.solver, this.solver.start(), step.travel, step.rack, this.drive);
    if (!result.reached) return describeFold(this.solver, result, step.rack, this.drive);
    const { state, report } = result;
    const steers = this.layout.links.some((l) => l.steered);
    const position = describePosition(this.solver, state, report, {
      spring: this.lengthAt(this.linkage.spring, state.pose),
      damper: this.lengthAt(this.linkage.damper, state.pose),
      steerRates: steers ? this.solver.steerRates(state.pose, state.rack, null) : null,
    });
    return position ?? foldHere(this.solver, state, this.drive);
  }

  /**
   * Exact derivatives of the wheel by travel, rack, every coordinate and every link length at a position that was solved;
   * null at a fold, where they are not finite.
   */
  gradientsAt(pose: Pose, rack: number): readonly WheelGradient[] | null {
    return computeWheelGradients(this.solver, pose, rack, this.drive);
  }

  /** Where the branch ends within `reach` metres of wheel-centre travel either side, rack at rest, and in which joints. */
  findEnds(reach: number): { readonly low: BranchEnd | null; readonly high: BranchEnd | null } {
    return findEnds(this.solver, reach);
  }

  private lengthAt(measure: Measure | null, pose: Pose): LengthAtPose | null {
    if (!measure) return null;
    const values = new Float64Array(1);
    const row = new Float64Array(this.solver.size);
    new MeasureEvaluator(this.linkage.mechanism, [measure]).evaluate(pose, 0, values, row);
    return { length: values[0] as number, row: [...row] };
  }
}
