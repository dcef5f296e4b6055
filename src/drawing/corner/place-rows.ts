import { type LabelColumn, type LabelSlot, placeInColumns, placeOnSlots } from "../labels/place-labels.ts";
import type { Spot } from "../path.ts";
import { COLUMN_GAP, KNEE_ROOM, SHEET_FOOT, SHEET_HEAD, type SheetPlace, type SheetPlan } from "./sheet-layout.ts";

/** Where a row stands and how its leader runs: level from the port to the knee, then straight to the point. */
export interface PlacedRow {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  readonly height: number;
  readonly port: Spot;
  readonly knee: Spot;
}

/** A knee stands this far from the drawing, so that leaders do not begin on it. */
const KNEE = 18;

/** The part of a sheet that is left for the drawing between its rows. */
export function drawingArea(place: SheetPlace, plan: SheetPlan): { readonly left: number; readonly right: number } {
  const taken = (columns: number) => columns * plan.rowWidth + Math.max(columns - 1, 0) * COLUMN_GAP + KNEE_ROOM;
  return { left: place.x + taken(place.left), right: place.x + place.width - taken(place.right) };
}

/** Page x of the column `index` of a side, counted from the drawing outward. */
function columnX(place: SheetPlace, plan: SheetPlan, side: "left" | "right", index: number): number {
  const area = drawingArea(place, plan);
  const step = index * (plan.rowWidth + COLUMN_GAP);
  return side === "left" ? area.left - KNEE_ROOM - plan.rowWidth - step : area.right + KNEE_ROOM + step;
}

/**
 * Rows of one sheet beside its drawing: none overlap, no leaders cross. With two columns on a side the outer one stands
 * half a row lower, and its leaders run through the gaps between the inner rows.
 */
export function placeRows(
  points: readonly { readonly id: string; readonly point: Spot }[],
  place: SheetPlace,
  plan: SheetPlan,
): readonly PlacedRow[] {
  const { pitch, gap, rowWidth } = plan;
  const area = drawingArea(place, plan);
  const top = place.y + SHEET_HEAD;
  const bottom = place.y + place.height - SHEET_FOOT;
  const rowHeight = pitch - gap;
  const sides = (["left", "right"] as const).filter((side) => place[side] > 0);
  const column = (side: "left" | "right"): LabelColumn => ({
    side,
    kneeX: side === "left" ? area.left - KNEE : area.right + KNEE,
    top,
    bottom,
    portOffset: rowHeight / 2,
  });
  const requests = points.map(({ id, point }) => ({ id, point, height: pitch }));
  const row = (id: string, side: "left" | "right", index: number, y: number, knee: Spot): PlacedRow => {
    const x = columnX(place, plan, side, index);
    return { id, x, y, height: rowHeight, port: [side === "left" ? x + rowWidth : x, knee[1]], knee };
  };
  if (place.left < 2 && place.right < 2) {
    const { placed } = placeInColumns(requests, sides.map(column));
    return placed.map(({ id, side, top: y, knee }) => row(id, side, 0, y, knee));
  }
  const count = Math.floor((bottom - top) / pitch - 0.5 + 1e-9);
  const step = (bottom - top) / (count + 0.5);
  const slots = sides.flatMap((side) =>
    [0, 1].flatMap((index) =>
      Array.from({ length: count }, (_, i): LabelSlot & { readonly index: number } => {
        const slotTop = top + (i + index / 2) * step;
        const centre = slotTop + rowHeight / 2;
        return { column: column(side), top: slotTop, knee: [column(side).kneeX, centre], index };
      }),
    ),
  );
  return placeOnSlots(requests, slots).map(({ request, slot }) =>
    row(request.id, slot.column.side, slot.index, slot.top, slot.knee),
  );
}
