import { axleAndSide } from "#vehicle";
import { scaleWords } from "../scale-words.ts";
import type { Mark, Scene, TypeScale } from "../scene.ts";
import { computeStyleWidth } from "../text-width.ts";
import { cornerShape, drawCornerView } from "./draw-corner-view.ts";
import {
  drawBeside,
  drawCornerInSpace,
  type EyePlace,
  eyeWords,
  type StandingCorner,
  turnedView,
} from "./draw-turned-corner.ts";
import { moveCorner } from "./moved-corner.ts";
import { drawGroundLine, EDGE, type FreeQuarter, freeQuarter, titleView } from "./view-frame.ts";
import { alignViews, cornerReach, type GeometryView } from "./views.ts";

export interface MovingCornerOptions {
  readonly width: number;
  readonly height: number;
  readonly type?: TypeScale;
  readonly eye: EyePlace;
}

/** A corner in space needs a quarter at least so wide and high. */
const LEAST_QUARTER = 90;
const AROUND = 20;
/** Its words stand so far above the quarter, on the line of the plan's. */
const TITLE_UP = 28;

/**
 * A corner as it stands, on three sheets (behind, from its side, above) and, in the quarter they leave free, in space from
 * where the eye is; other states and another car line thin over it, wheel centre on wheel centre at ride height.
 */
export function drawMovingCorner(standing: StandingCorner, options: MovingCornerOptions): Scene {
  const { width, height, type = "desk", eye } = options;
  const { family, corner, pose, rack, beside } = standing;
  const { axle: axleName, side } = axleAndSide(corner);
  const axle = family[axleName];
  const moved = moveCorner(axle, side, pose, rack);
  const same = beside
    .filter((other) => other.family === family)
    .map((other) => moveCorner(axle, side, other.pose, other.rack));
  const reach = cornerReach(axle, side, [moved, ...same]);
  const views = alignViews(reach, side, { x: EDGE, y: 8, width: width - 2 * EDGE, height: height - 24 }, "angle");
  const all = [views.behind, views.side, views.above];
  const free = freeQuarter(views, width, height);
  const shape = cornerShape(axle, moved, "");
  return {
    width,
    height,
    type,
    title: "The corner from behind, from its side, from above, and in space",
    description: `In space seen from ${eye.turn}° round from behind, ${eye.tilt}° above the ground.`,
    scale: scaleWords(views.above.scale),
    marks: [
      ...drawGroundLine(views, moved.groundZ, width - EDGE, reach, null),
      ...all.flatMap((view) => beside.flatMap((other) => drawBeside(view, other, corner, axle.wheel.centre))),
      ...all.flatMap((view) => drawCornerView(view, shape)),
      ...all.map((view) => titleView(view, width - 4, type)),
      ...inSpace(standing, free, eye, type),
    ],
    targets: [],
  };
}

/** The corner in space within the free quarter, its words on the line of the sheet's name beside it. */
function inSpace(standing: StandingCorner, free: FreeQuarter, eye: EyePlace, type: TypeScale): readonly Mark[] {
  if (free.width < LEAST_QUARTER || free.height < LEAST_QUARTER) return [];
  const { axle, side } = axleAndSide(standing.corner);
  const words = eyeWords(eye);
  const [from = words] = words.split(",");
  const fits = computeStyleWidth(words, "label-bold", type) <= free.width + EDGE;
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
    { kind: "text", x: free.x, y: free.y - TITLE_UP, text: fits ? words : from, style: "label-bold", halo: true },
    ...drawCornerInSpace(view, standing),
  ];
}
