import { type JetVector, parameterJet } from "#numeric";
import type { CornerLinkage } from "./corner-linkage.ts";
import { type JetAttitude, JetCorner, type JetPose, type JetScrew, jetAttitude, makeJetPose } from "./jet-corner.ts";
import type { Pose } from "./pose.ts";

/** Parameters of the wheel's figures: the six parts of a step of its pose, then the six of a velocity screw. */
const STEPS = 12;

/** The wheel's pose, attitude and a velocity screw as jets over a step of the pose and a change of the screw. */
export class WheelJets {
  readonly jets: JetCorner;
  private readonly moves: readonly Float64Array[];

  constructor(linkage: CornerLinkage) {
    this.jets = new JetCorner(linkage, [], STEPS);
    this.moves = Array.from({ length: STEPS }, (_, k) =>
      Float64Array.from({ length: 6 }, (__, c) => (c === k ? 1 : 0)),
    );
  }

  /** At a pose and a screw given in the vehicle frame. */
  at(
    pose: Pose,
    { v, w }: { readonly v: readonly number[]; readonly w: readonly number[] },
  ): { readonly place: JetPose; readonly attitude: JetAttitude; readonly screw: JetScrew } {
    const place = makeJetPose(this.jets, pose, this.moves);
    const screw = (of: readonly number[], first: number): JetVector => [
      parameterJet(of[0] as number, first, STEPS),
      parameterJet(of[1] as number, first + 1, STEPS),
      parameterJet(of[2] as number, first + 2, STEPS),
    ];
    return { place, attitude: jetAttitude(this.jets, place), screw: { v: screw(v, 6), w: screw(w, 9) } };
  }
}
