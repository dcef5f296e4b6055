import { polyline, type Spot } from "../path.ts";
import { niceAxis } from "../plot/ticks.ts";
import type { Mark, Scene, TypeScale } from "../scene.ts";
import { hairline, thinLine } from "../symbols/look.ts";
import { strokes } from "../tokens.ts";

/** A wheel angle over travel, as kept and as entered. */
export interface TravelLine {
  readonly title: string;
  /** [travel in mm, angle in degrees], travel rising. */
  readonly kept: readonly Spot[];
  readonly entered: readonly Spot[];
}

export interface TravelLinesOptions {
  readonly width: number;
  readonly height: number;
  readonly type?: TypeScale;
}

const LEFT = 34;
const TOP = 40;
const FOOT = 24;
const GAP = 22;
const FOOT_OF_TITLE = 18;

/** Toe and camber beside each other over travel, travel upright: as kept thin, as entered thick in the accent. */
export function drawTravelLines(lines: readonly TravelLine[], options: TravelLinesOptions): Scene {
  const { width, height, type = "desk" } = options;
  const travels = lines.flatMap(({ kept, entered }) => [...kept, ...entered].map(([travel]) => travel));
  const upright = niceAxis(travels, 4);
  const bottom = height - FOOT;
  const toY = (travel: number): number =>
    TOP + ((upright.high - travel) / (upright.high - upright.low || 1)) * (bottom - TOP);
  const each = (width - LEFT - GAP * (lines.length - 1) - 12) / Math.max(lines.length, 1);
  const marks: Mark[] = [];
  for (const [i, tick] of upright.ticks.entries()) {
    marks.push({
      kind: "text",
      x: LEFT - 8,
      y: toY(tick) + 4.5,
      text: upright.words[i] ?? "",
      style: "note",
      anchor: "end",
    });
  }
  for (const [i, line] of lines.entries()) marks.push(...drawLine(line, LEFT + i * (each + GAP), each, bottom, toY));
  return {
    width,
    height,
    type,
    title: "Toe and camber over travel",
    description: "As kept by a thin line, as entered by a thick one.",
    marks,
    targets: [],
  };
}

function drawLine(
  { title, kept, entered }: TravelLine,
  left: number,
  width: number,
  bottom: number,
  toY: (travel: number) => number,
): readonly Mark[] {
  const axis = niceAxis(
    [...kept, ...entered].map(([, angle]) => angle),
    Math.max(2, Math.min(4, Math.floor(width / 46))),
  );
  const toX = (angle: number): number => left + ((angle - axis.low) / (axis.high - axis.low || 1)) * width;
  const drawn = (spots: readonly Spot[]): string => polyline(spots.map(([travel, angle]) => [toX(angle), toY(travel)]));
  const rest = polyline([
    [left, toY(0)],
    [left + width, toY(0)],
  ]);
  return [
    { kind: "text", x: left, y: FOOT_OF_TITLE, text: title, style: "label-second" },
    { kind: "path", d: rest, stroke: hairline },
    ...axis.ticks.flatMap((tick, k): Mark[] => [
      {
        kind: "path",
        d: polyline([
          [toX(tick), bottom],
          [toX(tick), bottom + 5],
        ]),
        stroke: thinLine,
      },
      { kind: "text", x: toX(tick), y: bottom + 19, text: axis.words[k] ?? "", style: "note", anchor: "middle" },
    ]),
    {
      kind: "path",
      d: polyline([
        [left, bottom],
        [left + width, bottom],
      ]),
      stroke: thinLine,
    },
    ...(kept.length > 1
      ? [{ kind: "path", d: drawn(kept), stroke: { colour: "ink", width: strokes.sound } } as const]
      : []),
    ...(entered.length > 1
      ? [{ kind: "path", d: drawn(entered), stroke: { colour: "accent", width: strokes.curve } } as const]
      : []),
  ];
}
