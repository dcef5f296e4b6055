import { type Family, idWithoutSide, type Position, type PracticeLife } from "#vehicle";
import { placeOnSlots } from "../labels/place-labels.ts";
import { polyline, rectanglePath, type Spot } from "../path.ts";
import { niceAxis } from "../plot/ticks.ts";
import type { Mark, Target, TypeScale } from "../scene.ts";
import { drawLeader } from "../symbols/leader.ts";
import { hairline, thinLine } from "../symbols/look.ts";
import { shortenText, wrapText, wrapToLines } from "../text-width.ts";
import { dashes, faces } from "../tokens.ts";

/** One line of the calendar with the place it belongs to, on the car's left side. */
export interface LifeRow {
  readonly life: PracticeLife;
  readonly position: Position;
  readonly point: Spot;
  readonly y: number;
}

export interface CalendarArea {
  /** Where leaders bend, where names begin, where the scale begins and ends, right edge. */
  readonly kneeX: number;
  readonly nameX: number;
  readonly scaleLeft: number;
  readonly scaleRight: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** Room for a last column that says where each band comes from. */
  readonly saySource: boolean;
  /** Names stand over their bars, not beside them: the scale then begins where the names do. */
  readonly namesAbove: boolean;
}

export const CALENDAR_HEAD = 44;
export const CALENDAR_FOOT = 40;
/** Between the rows of the front axle and those of the rear one. */
const AXLE_GAP = 22;
const BAR_HALF = 5;
/** From the middle of a row to its bar where the name stands above it, and to the line of the name. */
const BAR_BELOW = 11;
const NAME_ABOVE = 9;

/** The positions a family has a practice life for, the left one of a pair; what names no position is left out. */
export function lifePositions(
  family: Family,
  positions: readonly Position[],
): readonly { readonly life: PracticeLife; readonly position: Position }[] {
  return family.life.flatMap((life) => {
    const named = positions.filter((position) => idWithoutSide(position) === life.position);
    const position = named.find(({ side }) => side === "left") ?? named[0];
    return position === undefined ? [] : [{ life, position }];
  });
}

/** Rows of a calendar: front axle over rear axle, in the order in which their leaders do not cross. */
export function placeLifeRows(
  entries: readonly { readonly life: PracticeLife; readonly position: Position; readonly point: Spot }[],
  area: CalendarArea,
): readonly LifeRow[] {
  const groups = (["front", "rear"] as const).map((axle) => entries.filter(({ position }) => position.axle === axle));
  const gaps = groups.every((group) => group.length > 0) ? AXLE_GAP : 0;
  const pitch = (area.bottom - area.top - gaps) / Math.max(entries.length, 1);
  let top = area.top;
  return groups.flatMap((group) => {
    const column = {
      side: "right",
      kneeX: area.kneeX,
      top,
      bottom: top + group.length * pitch,
      portOffset: pitch / 2,
    } as const;
    const slots = group.map((_, i) => {
      const slotTop = top + i * pitch;
      return { column, top: slotTop, knee: [area.kneeX, slotTop + pitch / 2] as const };
    });
    const requests = group.map(({ life, point }) => ({ id: life.position, point, height: pitch }));
    top += group.length * pitch + gaps;
    return placeOnSlots(requests, slots).flatMap(({ request, slot }): LifeRow[] => {
      const entry = group.find(({ life }) => life.position === request.id);
      return entry === undefined ? [] : [{ ...entry, y: slot.knee[1] }];
    });
  });
}

const thousands = (km: number): number => km / 1000;

/** The wear calendar: one row per position along a scale of distance; practice bands are dotted with a dashed edge. */
export function drawWearCalendar(
  rows: readonly LifeRow[],
  area: CalendarArea,
  selected: string | null,
  type: TypeScale,
): { readonly marks: readonly Mark[]; readonly targets: readonly Target[] } {
  const { size } = faces[type].label;
  const axis = niceAxis([0, ...rows.map(({ life }) => thousands(life.highKm))], 5);
  const far = Math.max(axis.high, ...axis.ticks);
  const toX = (value: number) => area.scaleLeft + (value / far) * (area.scaleRight - area.scaleLeft);
  const head = area.top - 12;
  const vertical = (x: number, y0: number, y1: number, stroke = hairline): Mark => ({
    kind: "path",
    d: polyline([
      [x, y0],
      [x, y1],
    ]),
    stroke,
  });
  const marks: Mark[] = [
    {
      kind: "path",
      d: polyline([
        [area.scaleLeft, head],
        [area.scaleRight, head],
      ]),
      stroke: thinLine,
    },
    area.namesAbove
      ? { kind: "text", x: area.right, y: head - 28, text: "thousand km", style: "note", anchor: "end" }
      : { kind: "text", x: area.scaleLeft - 12, y: head - 9, text: "thousand km", style: "note", anchor: "end" },
  ];
  for (const [i, tick] of axis.ticks.entries()) {
    if (tick < 0) continue;
    const x = toX(tick);
    marks.push(vertical(x, head, area.bottom + 6), vertical(x, head - 5, head, thinLine));
    marks.push({ kind: "text", x, y: head - 9, text: axis.words[i] ?? "", style: "note", anchor: "middle" });
  }
  const targets: Target[] = [];
  const pitch = rows.length < 2 ? 40 : Math.min(...rows.slice(1).map(({ y }, i) => Math.abs(y - (rows[i]?.y ?? y))));
  for (const { life, position, point, y } of rows) {
    const isSelected = life.position === selected;
    const ink = isSelected ? "accent" : "ink";
    const [low, middle, high] = [life.lowKm, life.middleKm, life.highKm].map((km) => toX(thousands(km)));
    const barY = area.namesAbove ? y + BAR_BELOW : y;
    if (low === undefined || middle === undefined || high === undefined) continue;
    marks.push(
      drawLeader({
        port: [area.nameX - 8, y],
        knee: [area.kneeX, y],
        point,
        clear: isSelected ? 15 : 5,
        selected: isSelected,
      }),
      ...nameMarks(position.label, area, y, isSelected ? "label-accent" : "label-bold", type),
      {
        kind: "path",
        d: rectanglePath(low, barY - BAR_HALF, high - low, 2 * BAR_HALF),
        fill: "dots-rubber",
        stroke: { colour: isSelected ? "accent" : "ink3", width: 1, dash: dashes.practice },
      },
      vertical(middle, barY - 10, barY + 10, { colour: ink, width: 2.4 }),
    );
    if (area.saySource) {
      const [x, base] = [area.right, y + size * 0.34];
      marks.push({ kind: "text", x, y: base, text: "practice", style: "note", anchor: "end" });
    }
    const figures = [life.lowKm, life.middleKm, life.highKm].map((km) => Math.round(thousands(km)));
    targets.push({
      id: life.position,
      name: `${position.axle === "front" ? "Front" : "Rear"}, ${position.label.toLowerCase()}: half gone by ${figures[1]} thousand km, from ${figures[0]} to ${figures[2]}, practice, not counted`,
      x: area.nameX - 4,
      y: y - pitch / 2,
      width: area.right - area.nameX + 8,
      height: pitch,
      ...(isSelected ? { selected: true } : {}),
    });
  }
  return { marks: [...marks, ...drawKey(rows, area, type)], targets };
}

/** The name of a row: over its bar, or beside it on two lines where the column is too narrow for one. */
function nameMarks(
  label: string,
  area: CalendarArea,
  y: number,
  style: "label-bold" | "label-accent",
  type: TypeScale,
): readonly Mark[] {
  const { size } = faces[type].label;
  if (area.namesAbove) {
    const text = shortenText(label, area.right - area.nameX, style, type);
    return [{ kind: "text", x: area.nameX, y: y - NAME_ABOVE + size * 0.34, text, style, halo: true }];
  }
  const lines = wrapText(label, area.scaleLeft - area.nameX - 10, style, type);
  return lines.map((text, i) => ({
    kind: "text",
    x: area.nameX,
    y: y + size * 0.34 + (i - (lines.length - 1) / 2) * size * 1.05,
    text,
    style,
  }));
}

/** What the band means, and who says so. */
function drawKey(rows: readonly LifeRow[], area: CalendarArea, type: TypeScale): readonly Mark[] {
  const y = area.bottom + 28;
  const sources = [...new Set(rows.map(({ life }) => life.source))].join("; ");
  const words = `low, middle and high from practice, not counted here: ${sources}`;
  const x = area.kneeX;
  const lines = wrapToLines(words, area.right - 44 - x, 2, "note", type);
  return [
    {
      kind: "path",
      d: rectanglePath(x, y - 10, 34, 10),
      fill: "dots-rubber",
      stroke: { colour: "ink3", width: 1, dash: dashes.practice },
    },
    {
      kind: "path",
      d: polyline([
        [x + 15, y - 14],
        [x + 15, y + 4],
      ]),
      stroke: { colour: "ink", width: 2.4 },
    },
    ...lines.map((text, i): Mark => ({ kind: "text", x: x + 44, y: y + i * 16, text, style: "note" })),
  ];
}
