import { type BarState, computeBar, MOST_TWIST_PER_LEAN, modelBar } from "#engines/linkage";
import type { Family } from "#vehicle";
import type { CornerModel } from "../fault/corner-model.ts";

/** Turn of a bar's levers and the force it sends to the left wheel, upward positive; null where there is no bar or no lever. */
export function twistOf(
  family: Family,
  axle: "front" | "rear",
  { geometry }: CornerModel,
  travel: { readonly left: number; readonly right: number },
): BarState | null {
  const { bar } = family[axle];
  const model = bar && modelBar(bar, geometry);
  return model ? computeBar(model, travel.left, travel.right) : null;
}

/** Whether the levers of a bar would turn further at this lean of the body (radians) than those of a bar in use. */
export const isBarDoubted = ({ twist }: BarState, lean: number): boolean =>
  Math.abs(twist) > MOST_TWIST_PER_LEAN * Math.abs(lean);
