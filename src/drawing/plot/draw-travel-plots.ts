import type { TravelLine, TravelPlot, TravelSheet } from "#casework";
import { mmFromMetres } from "#quantity";
import type { Box } from "../labels/crossing.ts";
import { polygon, polyline, type Spot } from "../path.ts";
import type { Colour, Mark, Scene, Stroke, TypeScale } from "../scene.ts";
import { hairline, thinLine } from "../symbols/look.ts";
import { wrapText, wrapToLines } from "../text-width.ts";
import { dashes, faces, stateColours, strokes } from "../tokens.ts";
import { clipBand, reachOfLines } from "./band-reach.ts";
import { LEFT, type Plot, placeBeside, RIGHT } from "./place-beside.ts";
import { niceAxis } from "./ticks.ts";

export interface TravelPlotsOptions {
  readonly width: number;
  readonly height: number;
  readonly type?: TypeScale;
  /** Travel at which the wheel is drawn, metres: a line across. */
  readonly at: number;
  /** What stands upright; absent: travel of the wheel, mm. */
  readonly upright?: { readonly title: string; readonly show: (si: number) => number };
}

/** What is drawn, and said to who cannot see it. */
export type DrawnSheet = Pick<TravelSheet, "plots" | "rows" | "poses" | "sentences">;

const TRAVEL = { title: "travel, mm", show: mmFromMetres };

const TOP = 34;
const FOOT = 64;
const BETWEEN = 34;
const MOST_NOTE_LINES = 3;
const NOTE_PITCH = 1.2;
/** A label gets so much width at least, page units: "lowered 30 mm" stays in one line. */
const LEAST_LABEL = 108;

/** What a line is drawn in: its state by colour, another height or car line by its dashes. */
const looks: Readonly<Record<TravelLine["subject"], Pick<Stroke, "dash">>> = {
  sound: {},
  rubber: {},
  "every-rubber": {},
  lowered: { dash: dashes.limit },
  beside: { dash: dashes.practice },
};

/** A loose place has the colour of a torn one, and is told from it by its dashes. */
const lookOf = (line: TravelLine): Pick<Stroke, "dash"> =>
  line.state === "loose" ? { dash: dashes.practice } : looks[line.subject];

const colourOf = (line: TravelLine): Colour =>
  line.subject === "beside" ? "ink2" : line.subject === "lowered" ? "g1" : stateColours[line.state];

/** Figures over travel beside each other, travel upright and shared, each line labelled by its own words, with its band. */
export function drawTravelPlots(sheet: DrawnSheet, options: TravelPlotsOptions): Scene {
  const { width, height, type = "desk" } = options;
  const { title, show } = options.upright ?? TRAVEL;
  const rises = sheet.plots.flatMap(({ lines }) => lines.flatMap((line) => line.rises.map(show)));
  const now = show(options.at);
  const upright = niceAxis(rises.length === 0 ? rises : [...rises, now], 8);
  const count = Math.max(sheet.plots.length, 1);
  const each = (width - LEFT - RIGHT - BETWEEN * (count - 1)) / count;
  const noteLines = Math.max(0, ...sheet.plots.map((plot) => notesOf(plot, each, type).length));
  const bottom = height - FOOT - noteLines * faces[type].note.size * NOTE_PITCH;
  const toY = (rise: number): number =>
    TOP + ((upright.high - rise) / (upright.high - upright.low || 1)) * (bottom - TOP);
  const numbers: readonly Box[] = upright.ticks.map((tick) => ({
    x: 0,
    y: toY(tick) - 10,
    width: LEFT - 2,
    height: 20,
  }));
  const marks: Mark[] = (rises.length === 0 ? [] : upright.ticks).map(
    (tick, i): Mark => ({
      kind: "text",
      x: LEFT - 10,
      y: toY(tick) + 4.5,
      text: `${tick > 0 ? "+" : ""}${upright.words[i] ?? ""}`,
      style: "note",
      anchor: "end",
    }),
  );
  if (rises.length > 0) marks.push({ kind: "text", x: 24, y: 18, text: title, style: "label-second" });
  for (const [i, plot] of sheet.plots.entries()) {
    const area = { x: LEFT + i * (each + BETWEEN), width: each, top: TOP, bottom, toY };
    // The first plot's labels may use the margin between the figures of the upright axis.
    marks.push(...drawPlot(plot, area, { now, show, numbers: i === 0 ? numbers : [] }, type));
  }
  const titles = sheet.plots.map((plot) => plot.title).join("; ");
  return {
    width,
    height,
    type,
    title: options.upright === undefined ? "Figures over travel" : `Figures over ${title}`,
    description: `${titles}. ${sheet.sentences.join(" ")}`,
    marks,
    targets: [],
  };
}

/** Where the line across lies, as shown, and how amounts are shown upright. */
interface Upright {
  readonly now: number;
  readonly show: (si: number) => number;
  /** Where its figures stand, which no label may cover. */
  readonly numbers: readonly Box[];
}

/** What is left out of a plot, wrapped to its width. */
const notesOf = ({ lines, leftOut }: TravelPlot, width: number, type: TypeScale): readonly string[] =>
  lines.length === 0 ? [] : wrapToLines(leftOut.join("; "), width + BETWEEN - 6, MOST_NOTE_LINES, "note", type);

function drawPlot(
  plot: TravelPlot,
  area: Omit<Plot, "toX">,
  { now, show, numbers }: Upright,
  type: TypeScale,
): readonly Mark[] {
  if (plot.lines.length === 0) return drawNothing(plot, area, type);
  const reach = reachOfLines(plot.lines, false);
  const axis = niceAxis([reach.low, reach.high], Math.max(2, Math.min(6, Math.floor(area.width / 52))));
  const toX = (value: number): number => area.x + ((value - axis.low) / (axis.high - axis.low || 1)) * area.width;
  const placed: Plot = { ...area, toX };
  const marks: Mark[] = axis.ticks.flatMap((tick, i): Mark[] => [
    { kind: "path", d: upright(toX(tick), area.top, area.bottom), stroke: hairline },
    { kind: "path", d: upright(toX(tick), area.bottom, area.bottom + 5), stroke: thinLine },
    { kind: "text", x: toX(tick), y: area.bottom + 20, text: axis.words[i] ?? "", style: "note", anchor: "middle" },
  ]);
  const [left, right] = [area.x, area.x + area.width];
  marks.push({
    kind: "path",
    d: polyline([
      [left, area.bottom],
      [right, area.bottom],
    ]),
    stroke: thinLine,
  });
  const pitch = faces[type].label.size * 1.15;
  const titles = wrapText(plot.title, area.width + BETWEEN - 6, "label-second", type);
  titles.forEach((text, i) => {
    marks.push({ kind: "text", x: right, y: area.bottom + 40 + i * pitch, text, style: "label-second", anchor: "end" });
  });
  const below = area.bottom + 40 + titles.length * pitch;
  notesOf(plot, area.width, type).forEach((text, i) => {
    const y = below + i * faces[type].note.size * NOTE_PITCH;
    marks.push({ kind: "text", x: right, y, text, style: "note", anchor: "end" });
  });
  const spotsOf = (line: TravelLine): readonly Spot[] =>
    line.values.map((value, i) => [toX(value), area.toY(show(line.rises[i] ?? 0))]);
  for (const line of plot.lines) {
    const { low, high, at } = clipBand(line, line.rises.map(show), axis);
    const edge = (side: readonly number[]): readonly Spot[] => side.map((v, i) => [toX(v), area.toY(at[i] ?? 0)]);
    const d = polygon([...edge(low), ...edge(high).toReversed()]);
    marks.push({
      kind: "path",
      d,
      fill: colourOf(line),
      opacity: line.subject === "rubber" || line.subject === "every-rubber" ? 0.16 : 0.1,
    });
  }
  const lines = plot.lines.map((line) => ({ line, spots: spotsOf(line) }));
  for (const { line, spots } of lines) {
    const stroke = { colour: colourOf(line), width: strokes.curve, cap: "round" as const, ...lookOf(line) };
    marks.push({ kind: "path", d: polyline(spots), stroke });
  }
  for (const { rise, value } of plot.dots ?? []) {
    const [cx, cy] = [toX(value), area.toY(show(rise))];
    if (value >= axis.low && value <= axis.high)
      marks.push({ kind: "circle", cx, cy, r: 5, fill: "paper", stroke: { colour: "accent", width: 2 } });
  }
  const level = area.toY(now);
  marks.push({
    kind: "path",
    d: polyline([
      [left - 6, level],
      [right, level],
    ]),
    stroke: { colour: "accent", width: 1.6 },
  });
  const taken: Box[] = [{ x: left, y: level - 2, width: area.width, height: 4 }, ...numbers];
  for (const { line, spots } of lines) {
    const words = wrapText(line.drawnAs ?? line.words, Math.max(area.width * 0.46, LEAST_LABEL), "label-bold", type);
    marks.push(...placeBeside(words, spots, lines, placed, colourOf(line), type, taken));
  }
  return marks;
}

/** In place of a figure that nothing here has: its name and why. */
function drawNothing(plot: TravelPlot, area: Omit<Plot, "toX">, type: TypeScale): readonly Mark[] {
  const { size } = faces[type].label;
  const head = wrapText(`${plot.title}: nothing to draw`, area.width, "label-bold", type);
  const words = [...head, ...wrapText(plot.leftOut.join("; "), area.width, "label-second", type)];
  return words.map((text, i) => ({
    kind: "text",
    x: area.x + area.width / 2,
    y: (area.top + area.bottom) / 2 + i * size * 1.3,
    text,
    style: i < head.length ? "label-bold" : "label-second",
    anchor: "middle",
  }));
}

const upright = (x: number, from: number, to: number): string =>
  polyline([
    [x, from],
    [x, to],
  ]);
