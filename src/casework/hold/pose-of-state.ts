import { type LoadState, TravelSweep } from "#engines/linkage";
import { poseOf } from "../fault/compute-fault-effect.ts";
import type { CornerModel } from "../fault/corner-model.ts";
import type { WheelPose } from "../fault-effect.ts";

/** The wheel of a held corner on the asked side, for the drawing. */
export function poseOfState(model: CornerModel, state: Pick<LoadState, "travel">): WheelPose {
  const at = new TravelSweep(model.geometry).solve({ travel: state.travel, rack: 0 });
  if ("foldAt" in at) throw new Error("a held corner reaches the height it is held at");
  return poseOf(model, at);
}
