import { type AxleName, type Family, type Position, positionsOf } from "#vehicle";
import { drawAxleFrame, drawAxleSteering } from "../below/axle-parts.ts";
import { belowView, halfWidth, reachAlong } from "../below/below-view.ts";
import { cornerParts } from "../below/corner-parts.ts";
import { drawnFamily } from "../below/drawn-family.ts";
import { computeLooks } from "../below/looks.ts";
import { countSeen } from "../below/position-state.ts";
import { drawSilhouette } from "../below/silhouette.ts";
import { drawWholeBar } from "../below/whole-bar.ts";
import { polyline } from "../path.ts";
import { scaleWords } from "../scale-words.ts";
import type { Mark, Scene } from "../scene.ts";
import { hairline } from "../symbols/look.ts";
import { groupOf, groupWords } from "../underside/car-targets.ts";
import { rungWords } from "../underside/rung-words.ts";
import type { CornerOptions } from "./draw-corner.ts";
import { drawingArea } from "./place-rows.ts";
import { planSheets, SHEET_HEAD } from "./sheet-layout.ts";
import { drawSheetHead, drawSheetRows } from "./sheet-rows.ts";

/** Positions that belong to an axle as a whole, in the order of the family. */
export function axlePositionsOf(family: Family, axle: AxleName): readonly Position[] {
  return positionsOf(family).filter((position) => groupOf(position) === axle);
}

/**
 * What belongs to an axle as a whole, opened as one sheet: rack, bar, subframe, final drive, fluid and results as rows;
 * the links of the corners are only hinted at.
 * @returns a scene whose targets (one per position) do not overlap and are at least 48 units high
 */
export function drawAxle(asked: Family, axleName: AxleName, options: CornerOptions): Scene {
  const { family, positions } = drawnFamily(asked);
  const { width, type = "desk", states, selected = null } = options;
  const axle = family[axleName];
  const list = positions.filter((position) => groupOf(position) === axleName);
  const [rear, front] = reachAlong(axle);
  const half = halfWidth(axle);
  const plan = planSheets(
    [{ rows: list.length, wide: 2 * half, long: front - rear }],
    { width, height: options.height, type },
    null,
  );
  const [place] = plan.sheets;
  if (place === undefined) throw new RangeError("an axle has one sheet");
  const area = drawingArea(place, plan);
  const spare = place.height - SHEET_HEAD - (front - rear) * plan.scale;
  const view = belowView((area.left + area.right) / 2, SHEET_HEAD + Math.max(spare, 0) / 2, front, plan.scale, null);
  const looks = computeLooks(family, positions, states, selected);
  const marks: Mark[] = [...drawSheetHead(place, groupWords(axleName), list, { states, type, note: rungWords(axle) })];
  if (plan.scale > 0 && axle.rung === "layout") marks.push(...drawSilhouette(view, axle));
  else if (plan.scale > 0) {
    const parts = (["left", "right"] as const).flatMap((side) => cornerParts(axle, side, positions));
    const lines = parts.flatMap((part) => part.lines.map((line) => polyline(line.map((p) => view.spot(p)))));
    const wheels = (["left", "right"] as const).flatMap((side) =>
      cornerParts(axle, side, [])
        .filter((part) => part.name === "tyre")
        .flatMap((part) => part.draw(view, (name) => ({ ...looks(axleName, side, name), unseen: false, weight: 1 }))),
    );
    marks.push(...drawAxleFrame(view, axle), { kind: "path", d: lines.join(""), stroke: hairline }, ...wheels);
    marks.push(...drawAxleSteering(view, axle, (part) => looks(axleName, null, part)));
    marks.push(...drawWholeBar(view, axle, looks(axleName, null, "bar")));
  }
  const hung = drawSheetRows(list, view, { place, plan, states, selected, type, saySide: true });
  const rung = rungWords(axle);
  return {
    width,
    height: plan.height,
    type,
    ...(plan.scale > 0 ? { scale: scaleWords(plan.scale) } : {}),
    title: `${family.name}, ${groupWords(axleName).toLowerCase()} from below`,
    description: `What belongs to the axle as a whole, from below, front up. ${countSeen(list, states)} of ${list.length} places looked at.${rung === null ? "" : ` The axle is ${rung}.`}`,
    marks: [...marks, ...hung.marks],
    targets: hung.targets,
    points: hung.points,
  };
}
