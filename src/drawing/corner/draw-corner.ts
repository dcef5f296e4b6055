import { axleAndSide, type Corner, type Family, type Position, positionsOf } from "#vehicle";
import { belowView, halfWidth, reachAlong } from "../below/below-view.ts";
import { cornerParts } from "../below/corner-parts.ts";
import { type DrawnFamily, drawnFamily } from "../below/drawn-family.ts";
import { computeLooks } from "../below/looks.ts";
import { countSeen, type PositionStates } from "../below/position-state.ts";
import { drawSilhouette } from "../below/silhouette.ts";
import { polyline } from "../path.ts";
import { scaleWords } from "../scale-words.ts";
import type { Mark, PressPoint, Scene, Target, TypeScale } from "../scene.ts";
import { hairline, inkLine } from "../symbols/look.ts";
import { drawRack } from "../symbols/rack.ts";
import { groupOf, groupWords } from "../underside/car-targets.ts";
import { rungWords } from "../underside/rung-words.ts";
import { drawCornerFrame } from "./corner-frame.ts";
import { drawingArea } from "./place-rows.ts";
import { planSheets, SHEET_HEAD, type SheetPlace, type SheetPlan } from "./sheet-layout.ts";
import { drawSheetHead, drawSheetRows, type SheetRows } from "./sheet-rows.ts";

export interface CornerOptions {
  readonly width: number;
  readonly height: number;
  readonly type?: TypeScale;
  readonly states: PositionStates;
  readonly selected?: string | null;
}

const SHEETS = ["lower", "upper"] as const;
const SHEET_WORDS = { lower: "Lower", upper: "Upper" } as const;

/** Positions shown when a corner is opened, in the order of the family. */
export function cornerPositions(family: Family, corner: Corner): readonly Position[] {
  return positionsOf(family).filter((position) => groupOf(position) === corner);
}

/**
 * One corner opened as two sheets, lower and upper, every position a row with a leader to its place.
 * @returns a scene whose targets (one per position) do not overlap and are at least 48 units high; it is higher than was
 *   asked for where the rows would not fit otherwise
 */
export function drawCorner(asked: Family, corner: Corner, options: CornerOptions): Scene {
  const { width, type = "desk", states } = options;
  const drawn = drawnFamily(asked);
  const { family } = drawn;
  const { axle: axleName, side } = axleAndSide(corner);
  const axle = family[axleName];
  const positions = drawn.positions.filter((position) => groupOf(position) === corner);
  const extent = cornerExtent(family, positions, corner);
  const own = SHEETS.map((sheet) => positions.filter((position) => position.sheet === sheet));
  const needs = own.map((list) => ({
    rows: list.length,
    wide: extent.outer - extent.inner,
    long: extent.front - extent.rear,
  }));
  const plan = planSheets(needs, { width, height: options.height, type }, side === "left" ? "right" : "left");
  const marks: Mark[] = [];
  const targets: Target[] = [];
  const points: PressPoint[] = [];
  for (const [i, sheet] of SHEETS.entries()) {
    const place = plan.sheets[i];
    const list = own[i];
    if (place === undefined || list === undefined) continue;
    const shown = drawSheet(drawn, corner, { sheet, place, plan, list, extent, options });
    marks.push(...shown.marks);
    targets.push(...shown.targets);
    points.push(...shown.points);
  }
  marks.push(...drawFolds(plan, width));
  const rung = rungWords(axle);
  const said = `${countSeen(positions, states)} of ${positions.length} places looked at`;
  return {
    width,
    height: plan.height,
    type,
    ...(plan.scale > 0 ? { scale: scaleWords(plan.scale) } : {}),
    title: `${family.name}, ${groupWords(corner).toLowerCase()} corner from below`,
    description: `Two sheets, lower and upper, seen from below, front up. ${said}.${rung === null ? "" : ` The axle is ${rung}.`}`,
    marks,
    targets,
    points,
  };
}

interface Extent {
  /** Metres off the middle of the car, and along it. */
  readonly inner: number;
  readonly outer: number;
  readonly front: number;
  readonly rear: number;
}

function cornerExtent(family: Family, positions: readonly Position[], corner: Corner): Extent {
  const axle = family[axleAndSide(corner).axle];
  const [rear, front] = reachAlong(axle);
  const across = positions.flatMap(({ at }) => (at === null ? [] : [Math.abs(at[1])]));
  return { inner: Math.max(0, Math.min(...across) - 0.08), outer: halfWidth(axle), front, rear };
}

interface SheetRequest {
  readonly sheet: "lower" | "upper";
  readonly place: SheetPlace;
  readonly plan: SheetPlan;
  readonly list: readonly Position[];
  readonly extent: Extent;
  readonly options: CornerOptions;
}

function drawSheet({ family, positions }: DrawnFamily, corner: Corner, request: SheetRequest): SheetRows {
  const { sheet, place, plan, list, extent, options } = request;
  const { type = "desk", states, selected = null } = options;
  const { axle: axleName, side } = axleAndSide(corner);
  const axle = family[axleName];
  const { scale } = plan;
  const area = drawingArea(place, plan);
  const middle = (area.left + area.right) / 2;
  const across = ((extent.inner + extent.outer) / 2) * scale * (side === "left" ? 1 : -1);
  const spare = place.height - SHEET_HEAD - (extent.front - extent.rear) * scale;
  const view = belowView(middle - across, place.y + SHEET_HEAD + spare / 2 - 4, extent.front, scale, null);

  const looks = computeLooks(family, positions, states, selected);
  const look = (part: string) => looks(axleName, side, part);
  const marks: Mark[] = [
    ...drawSheetHead(place, SHEET_WORDS[sheet], list, {
      states,
      type,
      note: sheet === "lower" ? rungWords(axle) : null,
    }),
  ];
  if (scale > 0 && axle.rung === "layout") marks.push(...drawSilhouette(view, axle, side));
  else if (scale > 0) {
    const parts = cornerParts(axle, side, positions, extent.inner);
    const ghosts = parts.filter((part) => part.sheet !== "both" && part.sheet !== sheet);
    const lines = ghosts.flatMap((part) => part.lines.map((line) => polyline(line.map((p) => view.spot(p)))));
    marks.push(...drawCornerFrame(view, axle, side, extent.inner, extent.outer));
    marks.push({ kind: "path", d: lines.join(""), stroke: hairline });
    const tieRod = axle.links.find((link) => link.steered);
    if (tieRod !== undefined && sheet === "lower") {
      const half = { side, from: extent.inner };
      marks.push(...drawRack(view, { joint: tieRod.inner.at, half }, looks(axleName, null, "rack")));
    }
    for (const part of parts) if (part.sheet === "both" || part.sheet === sheet) marks.push(...part.draw(view, look));
  }

  const hung = drawSheetRows(list, view, { place, plan, states, selected, type });
  return { ...hung, marks: [...marks, ...hung.marks] };
}

/** The fold between the two sheets. */
function drawFolds(plan: SheetPlan, width: number): readonly Mark[] {
  return plan.sheets.slice(1).map((place): Mark => {
    const stacked = place.y > 0;
    const d = stacked
      ? polyline([
          [place.x, place.y],
          [width - place.x, place.y],
        ])
      : polyline([
          [place.x - 12, 12],
          [place.x - 12, plan.height - 12],
        ]);
    return { kind: "path", d, stroke: stacked ? inkLine : hairline };
  });
}
