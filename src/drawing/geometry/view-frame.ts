import { crossesBox, type Segment } from "../labels/crossing.ts";
import { polyline } from "../path.ts";
import type { Mark, Scene, TypeScale } from "../scene.ts";
import { thinLine } from "../symbols/look.ts";
import { computeStyleWidth } from "../text-width.ts";
import type { CornerReach, GeometryView, ViewName } from "./views.ts";

/** Left free round three views. */
export const EDGE = 24;

/** Name of a view; only from where it is seen, where the way it lies has no room before `end`. */
export function titleView(view: GeometryView, end: number, type: TypeScale): Mark {
  const [x, y] = [view.corner[0], view.corner[1] + 12];
  const [from = view.title] = view.title.split(",");
  const fits = x + computeStyleWidth(view.title, "label-bold", type) <= end;
  return { kind: "text", x, y, text: fits ? view.title : from, style: "label-bold", halo: true };
}

/** The ground as a line under the two upright views, its word where the leader of the ring does not cross it. */
export function drawGroundLine(
  views: Readonly<Record<ViewName, GeometryView>>,
  z: number,
  x1: number,
  reach: CornerReach,
  leader: Segment | null,
): readonly Mark[] {
  const y = views.behind.spot([0, 0, z])[1];
  const x0 = views.behind.corner[0];
  const width = computeStyleWidth("ground", "note");
  const [left, right] = [reach.y[1], reach.y[0]].map((across) => views.behind.spot([0, across])[0]) as [number, number];
  const places = [x1 - width, right - width, left, x0];
  const free = places.find(
    (x) => leader === null || !crossesBox(leader, { x: x - 4, y: y - 20, width: width + 8, height: 20 }),
  );
  return [
    {
      kind: "path",
      d: polyline([
        [x0, y],
        [x1, y],
      ]),
      stroke: thinLine,
    },
    { kind: "text", x: free ?? x1 - width, y: y - 5, text: "ground", style: "note", halo: true },
  ];
}

export type FreeQuarter = NonNullable<Scene["free"]>;

/** The quarter the three views leave free, at the lower right. */
export function freeQuarter(
  views: Readonly<Record<ViewName, GeometryView>>,
  width: number,
  height: number,
): FreeQuarter {
  const x = views.side.corner[0] + 12;
  const y = views.above.corner[1] + 40;
  return { x, y, width: width - EDGE - x, height: height - y - 8 };
}
