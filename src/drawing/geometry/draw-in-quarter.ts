import { axleAndSide } from "#vehicle";
import type { Mark, TypeScale } from "../scene.ts";
import { computeStyleWidth } from "../text-width.ts";
import { drawCornerInSpace, type EyePlace, eyeWords, type StandingCorner, turnedView } from "./draw-turned-corner.ts";
import { EDGE, type FreeQuarter } from "./view-frame.ts";
import { cornerReach, type GeometryView } from "./views.ts";

/** A corner in space needs a quarter at least so wide and high. */
const LEAST_QUARTER = 90;
const AROUND = 20;
/** Between the words of the plan and those of this. */
const BETWEEN = 14;
/** Its words stand so far above the quarter, on the line of the plan's. */
const TITLE_UP = 28;

/** The corner in space within the quarter that its sheets leave free, its words on the line of the plan's, clear of them. */
export function drawInQuarter(
  standing: StandingCorner,
  { free, plan }: { readonly free: FreeQuarter; readonly plan: GeometryView },
  eye: EyePlace,
  type: TypeScale,
): readonly Mark[] {
  if (free.width < LEAST_QUARTER || free.height < LEAST_QUARTER) return [];
  const { axle, side } = axleAndSide(standing.corner);
  const words = eyeWords(eye);
  const [from = words] = words.split(",");
  const start = Math.max(free.x, plan.corner[0] + computeStyleWidth(plan.title, "label-bold", type) + BETWEEN);
  const fits = start + computeStyleWidth(words, "label-bold", type) <= free.x + free.width + EDGE;
  // What a page of its own leaves round it, the quarter already has.
  const room = { width: free.width + 2 * AROUND, height: free.height + 2 * AROUND, eye };
  const inner = turnedView(cornerReach(standing.family[axle], side), room);
  const view: GeometryView = {
    ...inner,
    spot: (p) => {
      const [x, y] = inner.spot(p);
      return [free.x - AROUND + x, free.y - AROUND + y];
    },
  };
  return [
    { kind: "text", x: start, y: free.y - TITLE_UP, text: fits ? words : from, style: "label-bold", halo: true },
    ...drawCornerInSpace(view, standing),
  ];
}
