import type { Axle } from "#vehicle";
import { polyline, roundedPolygon } from "../path.ts";
import type { Mark } from "../scene.ts";
import { hairline, type Look, thinLine } from "../symbols/look.ts";
import { drawRack } from "../symbols/rack.ts";
import { drawSubframe } from "../symbols/subframe.ts";
import { dashes } from "../tokens.ts";
import type { BelowView } from "./below-view.ts";
import { halfWidth } from "./below-view.ts";
import type { PartName } from "./part-of.ts";

/** Half outline of a final drive about the axle line: metres ahead of the wheel centres, metres to the left. */
const FINAL_DRIVE = [
  [0.2, 0.04],
  [0.1, 0.07],
  [0.06, 0.128],
  [-0.06, 0.128],
  [-0.14, 0.08],
] as const;

/** What belongs to the axle as a whole and lies farthest from the eye: axle line, subframe, final drive. */
export function drawAxleFrame(view: BelowView, axle: Axle): readonly Mark[] {
  const [wx] = axle.wheel.centre;
  const reach = halfWidth(axle);
  const thin: Look = { weight: 1, colour: "ink3", unseen: false };
  const axis: Mark = {
    kind: "path",
    d: polyline([view.spot([wx, -reach]), view.spot([wx, reach])]),
    stroke: { ...hairline, dash: dashes.axis },
  };
  const finalDrive: Mark[] = [];
  if (axle.driven && axle.name === "rear") {
    const left = FINAL_DRIVE.map(([x, y]) => view.spot([wx + x, y]));
    const right = FINAL_DRIVE.toReversed().map(([x, y]) => view.spot([wx + x, -y]));
    finalDrive.push({ kind: "path", d: roundedPolygon([...left, ...right], 0.04 * view.scale), stroke: thinLine });
  }
  return [axis, ...drawSubframe(view, axle.subframe, axle.subframeMounts, thin), ...finalDrive];
}

/** The steering rack of a steered axle. */
export function drawAxleSteering(view: BelowView, axle: Axle, look: (part: PartName) => Look): readonly Mark[] {
  const tieRod = axle.links.find((link) => link.steered);
  return tieRod === undefined ? [] : drawRack(view, { joint: tieRod.inner.at }, look("rack"));
}
