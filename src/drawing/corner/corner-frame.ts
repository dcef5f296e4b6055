import type { Axle, Side } from "#vehicle";
import { polyline, roundedPolygon } from "../path.ts";
import { type CarPoint, onSide, type Projection } from "../projection.ts";
import type { Mark } from "../scene.ts";
import { hairline, thinLine } from "../symbols/look.ts";
import { dashes } from "../tokens.ts";

type FlatPoint = readonly [x: number, y: number];

/** The part of a closed outline that lies at least `from` off the middle of the car on the left side. */
export function clipOutline(outline: readonly FlatPoint[], from: number): readonly FlatPoint[] {
  return outline.flatMap((point, i): readonly FlatPoint[] => {
    const previous = outline.at(i - 1) ?? point;
    const inside = point[1] >= from;
    const crossing = inside !== previous[1] >= from;
    const share = (from - previous[1]) / (point[1] - previous[1] || 1);
    const cut: FlatPoint = [previous[0] + (point[0] - previous[0]) * share, from];
    return [...(crossing ? [cut] : []), ...(inside ? [point] : [])];
  });
}

/** What lies behind a corner: axle line and the near half of the subframe, cut where the sheet ends. */
export function drawCornerFrame(view: Projection, axle: Axle, side: Side, from: number, to: number): readonly Mark[] {
  const [wx] = axle.wheel.centre;
  const place = (point: CarPoint) => view.spot(onSide(side, point));
  const frames = axle.subframe.flatMap((outline): Mark[] => {
    const half = clipOutline(outline, from);
    if (half.length < 3) return [];
    const d = roundedPolygon(
      half.map(([x, y]) => place([x, y])),
      0.036 * view.scale,
    );
    return [{ kind: "path", d, stroke: thinLine }];
  });
  const axis: Mark = {
    kind: "path",
    d: polyline([place([wx, from]), place([wx, to])]),
    stroke: { ...hairline, dash: dashes.axis },
  };
  return [axis, ...frames];
}
