import { axleAndSide } from "#vehicle";
import { scaleWords } from "../scale-words.ts";
import type { Scene, TypeScale } from "../scene.ts";
import { cornerShape, drawCornerView } from "./draw-corner-view.ts";
import { drawInQuarter } from "./draw-in-quarter.ts";
import { drawBeside, type EyePlace, type StandingCorner } from "./draw-turned-corner.ts";
import { moveCorner } from "./moved-corner.ts";
import { drawGroundLine, EDGE, freeQuarter, titleView } from "./view-frame.ts";
import { alignViews, cornerReach } from "./views.ts";

export interface MovingCornerOptions {
  readonly width: number;
  readonly height: number;
  readonly type?: TypeScale;
  readonly eye: EyePlace;
}

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
      ...drawInQuarter(standing, { free, plan: views.above }, eye, type),
    ],
    targets: [],
  };
}
