import type { Axle, Side } from "#vehicle";
import { circlePath, polyline, roundedPolygon, type Spot } from "../path.ts";
import { type CarPoint, onSide } from "../projection.ts";
import type { Mark } from "../scene.ts";
import { hairline, inkLine, thinLine } from "../symbols/look.ts";
import { dashes } from "../tokens.ts";
import { type BelowView, halfWidth } from "./below-view.ts";

/**
 * An axle of which only the layout is known: wheels from the tyre size, links as single lines between rings, no parts.
 * Nothing here is a measure of the car but wheelbase, track and tyre.
 * @param only one side alone; absent = both
 */
export function drawSilhouette(view: BelowView, axle: Axle, only?: Side): readonly Mark[] {
  const { centre, freeRadius, tyreWidth } = axle.wheel;
  const reach = halfWidth(axle);
  const axis: Mark = {
    kind: "path",
    d: polyline([view.spot([centre[0], -reach]), view.spot([centre[0], reach])]),
    stroke: { ...hairline, dash: dashes.axis },
  };
  const shown: readonly Side[] = only === undefined ? ["left", "right"] : [only];
  const sides = shown.flatMap((side): Mark[] => {
    const place = (u: number, v: number) => view.spot(onSide(side, [centre[0] + u, centre[1] + v]));
    const tyre = [
      place(freeRadius, -tyreWidth / 2),
      place(freeRadius, tyreWidth / 2),
      place(-freeRadius, tyreWidth / 2),
      place(-freeRadius, -tyreWidth / 2),
    ];
    const sticks: readonly (readonly CarPoint[])[] = [
      ...axle.links.map((link) => [link.inner.at, link.outer.at]),
      ...(axle.trailingArm === undefined
        ? []
        : [[axle.trailingArm.bush.at, [centre[0], centre[1] - 0.06, centre[2]] as const]]),
    ];
    const ends: readonly Spot[] = sticks.flatMap((stick) => stick.map((point) => view.spot(onSide(side, point))));
    return [
      { kind: "path", d: roundedPolygon(tyre, 0.035 * view.scale), stroke: thinLine, fill: "paper" },
      ...sticks.map(
        (stick): Mark => ({
          kind: "path",
          d: polyline(stick.map((point) => view.spot(onSide(side, point)))),
          stroke: inkLine,
        }),
      ),
      { kind: "path", d: ends.map((end) => circlePath(end, 3)).join(""), stroke: inkLine, fill: "paper" },
    ];
  });
  return [axis, ...sides];
}
