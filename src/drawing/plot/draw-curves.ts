import type { Curve, CurveLine, FaultEffect } from "#casework";
import { mmFromMetres } from "#quantity";
import type { Box } from "../labels/crossing.ts";
import { polygon, polyline, type Spot } from "../path.ts";
import type { Mark, Scene, TypeScale } from "../scene.ts";
import { drawDimension } from "../symbols/dimension-line.ts";
import { hairline, thinLine } from "../symbols/look.ts";
import { computeStyleWidth, wrapText, wrapToLines } from "../text-width.ts";
import { dashes, faces, stateColours, strokes } from "../tokens.ts";
import { clipBand, type Reach, reachOfLines } from "./band-reach.ts";
import type { FormatFigure } from "./format-figure.ts";
import { LEFT, type Plot, placeBeside, RIGHT } from "./place-beside.ts";
import { formatSigned, niceAxis } from "./ticks.ts";

export interface CurveOptions {
  readonly width: number;
  readonly height: number;
  readonly type?: TypeScale;
  readonly format: FormatFigure;
}

const TOP = 34;
const FOOT = 76;
/** More room at the foot where a band runs on and says how far. */
const RUNNING_ON = 28;
const BETWEEN = 34;
const TOE_SHARE = 0.54;
/** Lines nearer to each other than this all along are labelled together, page units. */
const NEARLY_THE_SAME = 9;
const TITLES: Readonly<Record<Curve["quantity"], string>> = {
  toe: "toe, °, in is +",
  camber: "camber, °",
  "toe-change": "toe less sound, °, in is +",
  "camber-change": "camber less sound, °",
};

/**
 * Toe and camber over travel beside each other, travel upright and shared; the sound wheel in ink, the other one in the
 * colour of its state, each with its band; the state asked for as a line across. The axis follows the lines: a band far
 * wider than they reach runs on beyond the frame, marked so. A curve whose sign is not sure is not drawn: its place says
 * which reading would settle it.
 */
export function drawCurves(effect: FaultEffect, options: CurveOptions): Scene {
  const { width, height, type = "desk" } = options;
  const rises = effect.rises.map(mmFromMetres);
  const [low, high] = [Math.min(...rises), Math.max(...rises)];
  const now = mmFromMetres(effect.question.condition.contactRise);
  const inner = width - LEFT - RIGHT - BETWEEN;
  const widths = [inner * TOE_SHARE, inner * (1 - TOE_SHARE)] as const;
  const chosen = (["toe", "camber"] as const).map((quantity) => chooseCurve(effect, quantity));
  const runsOn = chosen.some((curve) => curve?.drawable === true && reachOf(curve).beyond !== null);
  const foot = FOOT + (runsOn ? RUNNING_ON : 0);
  const toY = (rise: number) => TOP + ((high - rise) / (high - low || 1)) * (height - TOP - foot);
  const marks: Mark[] = [];
  for (const [i, curve] of chosen.entries()) {
    if (curve === null) continue;
    const x = i === 0 ? LEFT : LEFT + widths[0] + BETWEEN;
    const area = { x, width: widths[i] ?? 0, top: TOP, bottom: height - foot, toY };
    marks.push(
      ...(curve.drawable ? drawCurve(effect, curve, rises, now, area, options) : drawNotDrawn(curve, area, type)),
    );
  }
  if (chosen.some((curve) => curve?.drawable === true)) marks.push(...drawTravel(rises, toY));
  return {
    width,
    height,
    type,
    title: "Toe and camber over travel",
    description: describe(effect, now, options.format),
    marks,
    targets: [],
  };
}

/** Rises that are written at the upright axis, millimetres. */
function travelTicks(rises: readonly number[]): readonly number[] {
  const [low, high] = [Math.min(...rises), Math.max(...rises)];
  const inside = niceAxis(rises, 8).ticks.filter((tick) => tick >= low - 1e-9 && tick <= high + 1e-9);
  const middle = Math.max(inside.indexOf(0), 0);
  return inside.length > 6 ? inside.filter((_, i) => (i - middle) % 2 === 0) : inside;
}

/** The upright axis both curves share: travel from ride height. */
function drawTravel(rises: readonly number[], toY: (rise: number) => number): readonly Mark[] {
  return [
    ...travelTicks(rises).map((tick): Mark => {
      const text = tick === 0 ? "0" : `${tick > 0 ? "+" : "−"}${Math.abs(tick)}`;
      return { kind: "text", x: LEFT - 10, y: toY(tick) + 4.5, text, style: "note", anchor: "end" };
    }),
    { kind: "text", x: 4, y: 18, text: "travel, mm", style: "label-second" },
  ];
}

/**
 * The curve itself where it can be drawn; else what the fault changes in it, which is often better known, where the sign of
 * that change is sure; else the curve undrawn, with the reading that would settle it.
 */
export function chooseCurve(effect: FaultEffect, quantity: "toe" | "camber"): Curve | null {
  const by = (name: Curve["quantity"]) => effect.curves.find((curve) => curve.quantity === name);
  const [own, change] = [by(quantity), by(`${quantity}-change`)];
  if (own?.drawable === true) return own;
  const figure = effect.figures.find(({ key }) => key === `${quantity}-change`);
  if (change?.drawable === true && figure?.signSure === true) return change;
  if (own === undefined) return null;
  return { ...own, settle: own.settle ?? figure?.settle ?? null };
}

/** What the axis of a curve has to hold; that of a change holds zero. */
const reachOf = (curve: Curve): Reach => reachOfLines(curve.lines, curve.quantity.endsWith("-change"));

type Area = Pick<Plot, "x" | "width" | "top" | "bottom" | "toY">;

function drawCurve(
  effect: FaultEffect,
  curve: Curve,
  rises: readonly number[],
  now: number,
  area: Area,
  options: CurveOptions,
): readonly Mark[] {
  const isChange = curve.quantity.endsWith("-change");
  const reach = reachOf(curve);
  const axis = niceAxis([reach.low, reach.high], Math.max(2, Math.min(6, Math.floor(area.width / 48))));
  const toX = (value: number) => area.x + ((value - axis.low) / (axis.high - axis.low)) * area.width;
  const plot: Plot = { ...area, toX };
  const marks: Mark[] = [];
  for (const [i, tick] of axis.ticks.entries()) {
    const x = toX(tick);
    const grid = polyline([
      [x, area.top],
      [x, area.bottom],
    ]);
    marks.push({ kind: "path", d: grid, stroke: hairline });
    const foot = polyline([
      [x, area.bottom],
      [x, area.bottom + 5],
    ]);
    marks.push({ kind: "path", d: foot, stroke: thinLine });
    marks.push({ kind: "text", x, y: area.bottom + 20, text: axis.words[i] ?? "", style: "note", anchor: "middle" });
  }
  const base = polyline([
    [area.x, area.bottom],
    [area.x + area.width, area.bottom],
  ]);
  marks.push({ kind: "path", d: base, stroke: thinLine });
  const type = options.type ?? "desk";
  const names = wrapText(TITLES[curve.quantity], area.width + BETWEEN - 6, "label-second", type);
  const pitch = faces[type].label.size * 1.15;
  for (const [i, text] of names.entries()) {
    const y = area.bottom + 40 + i * pitch;
    marks.push({ kind: "text", x: area.x + area.width, y, text, style: "label-second", anchor: "end" });
  }
  if (isChange) {
    const zero = polyline([
      [toX(0), area.top],
      [toX(0), area.bottom],
    ]);
    marks.push({ kind: "path", d: zero, stroke: { colour: "ink", width: 1 } });
  }
  const spotsOf = (line: readonly number[]): readonly Spot[] =>
    line.map((value, i) => [toX(value), area.toY(rises[i] ?? 0)]);
  for (const line of curve.lines) {
    const { low, high, at } = clipBand(line, rises, axis);
    const edge = (side: readonly number[]): readonly Spot[] =>
      side.map((value, i) => [toX(value), area.toY(at[i] ?? 0)]);
    const band = polygon([...edge(low), ...edge(high).toReversed()]);
    marks.push({ kind: "path", d: band, fill: stateColours[line.state], opacity: line.state === "sound" ? 0.1 : 0.16 });
  }
  marks.push(...drawRunningOn(curve, reach, plot, area.bottom + 40 + names.length * pitch, type));
  const lines = curve.lines.map((line) => ({ line, spots: spotsOf(line.values) }));
  for (const { line, spots } of lines) {
    const width = strokes.curve;
    marks.push({ kind: "path", d: polyline(spots), stroke: { colour: stateColours[line.state], width, cap: "round" } });
  }
  const level = area.toY(now);
  const across = polyline([
    [area.x - 6, level],
    [area.x + area.width, level],
  ]);
  marks.push({ kind: "path", d: across, stroke: { colour: "accent", width: 1.6 } });
  const dots = lines.map(({ line }) => ({ line, x: toX(interpolate(rises, line.values, now)) }));
  for (const { line, x } of dots) {
    marks.push({
      kind: "circle",
      cx: x,
      cy: level,
      r: 4.5,
      fill: stateColours[line.state],
      stroke: { colour: "paper", width: 1.5 },
    });
  }
  const taken: Box[] = [{ x: area.x, y: level - 2, width: area.width, height: 4 }];
  // The first plot's labels may use the margin between the figures of the upright axis.
  if (area.x === LEFT)
    taken.push(...travelTicks(rises).map((tick) => ({ x: 0, y: area.toY(tick) - 10, width: LEFT - 8, height: 20 })));
  if (isChange) taken.push({ x: toX(0) - 2, y: area.top, width: 4, height: area.bottom - area.top });
  marks.push(...drawDifference(effect, curve, rises, now, plot, taken, options.format));
  marks.push(...labelLines(lines, plot, type, taken));
  return marks;
}

/** Where a band is wider than the frame: the frame's edge dashed on that side, and how far the band goes. */
function drawRunningOn(curve: Curve, reach: Reach, plot: Plot, base: number, type: TypeScale): readonly Mark[] {
  if (reach.beyond === null) return [];
  const { low, high, state } = reach.beyond;
  const colour = stateColours[state];
  const edges = [low === null ? [] : [plot.x], high === null ? [] : [plot.x + plot.width]].flat();
  const lines = edges.map((x): Mark => {
    const d = polyline([
      [x, plot.top],
      [x, plot.bottom],
    ]);
    return { kind: "path", d, stroke: { colour, width: 1.4, dash: dashes.practice } };
  });
  const ends = [low, high].flatMap((end) =>
    end === null ? [] : [`${formatSigned(end, Math.abs(end) < 10 ? 1 : 0)}°`],
  );
  const said = `${curve.lines.length > 1 ? `${state}: ` : ""}band runs on to ${ends.join(" and ")}`;
  const words = wrapToLines(said, plot.width + BETWEEN - 6, 2, "note", type);
  const pitch = faces[type].note.size * 1.1;
  return [
    ...lines,
    ...words.map(
      (text, i): Mark => ({
        kind: "text",
        x: plot.x + plot.width,
        y: base + i * pitch,
        text,
        style: "note",
        anchor: "end",
      }),
    ),
  ];
}

/** The difference between sound and not sound at the state asked for, as a dimension, where there is room to read it. */
function drawDifference(
  effect: FaultEffect,
  curve: Curve,
  rises: readonly number[],
  now: number,
  plot: Plot,
  taken: Box[],
  format: FormatFigure,
): readonly Mark[] {
  const [sound, other] = [
    curve.lines.find(({ state }) => state === "sound"),
    curve.lines.find(({ state }) => state !== "sound"),
  ];
  const figure = effect.figures.find(({ key }) => key === `${curve.quantity}-change`);
  if (sound === undefined || other === undefined || figure?.signSure !== true) return [];
  const [a, b] = [interpolate(rises, sound.values, now), interpolate(rises, other.values, now)];
  if (Math.abs(plot.toX(a) - plot.toX(b)) < 22) return [];
  const level = plot.toY(now);
  const y = level + 20 > plot.bottom - 24 ? level - 22 : level + 20;
  const label = format({ ...figure, value: Math.abs(figure.value) });
  const width = computeStyleWidth(label, "label-bold") + 8;
  const middle = (plot.toX(a) + plot.toX(b)) / 2;
  taken.push({ x: middle - width / 2, y: Math.min(y, level) - 4, width, height: 44 });
  return drawDimension({ from: [plot.toX(a), y], to: [plot.toX(b), y], label, style: "label-bold", offset: 17 });
}

/** Direct labels: each beside its line where it touches no line and no other label. */
function labelLines(
  lines: readonly { readonly line: CurveLine; readonly spots: readonly Spot[] }[],
  plot: Plot,
  type: TypeScale,
  taken: Box[],
): readonly Mark[] {
  const [first, second] = lines;
  if (first === undefined) return [];
  const apart =
    second === undefined
      ? Infinity
      : Math.max(...first.spots.map(([x], i) => Math.abs(x - (second.spots[i]?.[0] ?? x))));
  if (second !== undefined && apart < NEARLY_THE_SAME) {
    const narrow = plot.width < 150;
    const words = narrow
      ? [first.line.state, `and ${second.line.state}`, "nearly", "the same"]
      : [`${first.line.state} and`, `${second.line.state}, nearly`, "the same"];
    return placeBeside(words, first.spots, lines, plot, "ink", type, taken);
  }
  return lines.flatMap(({ line, spots }) =>
    placeBeside([line.state], spots, lines, plot, stateColours[line.state], type, taken),
  );
}

/** In place of a curve whose sign is not sure: that it is not drawn, and the reading that would settle it. */
function drawNotDrawn(curve: Curve, area: Area, type: TypeScale): readonly Mark[] {
  const middle = area.x + area.width / 2;
  const name = curve.quantity.replace("-", " ");
  const head = wrapText(`${name} not drawn`, area.width, "label-bold", type);
  const reason = wrapText("which way it runs is not sure", area.width, "label-second", type);
  const pitch = faces[type].label.size * 1.3;
  const room = Math.floor((area.bottom - area.top) / pitch) - head.length - reason.length;
  const settle = curve.settle === null ? [] : settleLines(curve.settle, area.width, Math.max(room, 1), type);
  const lines = [
    ...head.map((text) => ({ text, style: "label-bold" as const })),
    ...[...reason, ...settle].map((text) => ({ text, style: "label-second" as const })),
  ];
  const top = (area.top + area.bottom - lines.length * pitch) / 2 + faces[type].label.size;
  return lines.map(
    ({ text, style }, i): Mark => ({ kind: "text", x: middle, y: top + i * pitch, text, style, anchor: "middle" }),
  );
}

/** What would settle a curve, whole; where there is no room for that its first sentence, which says how much it takes. */
function settleLines(settle: string, width: number, most: number, type: TypeScale): readonly string[] {
  const whole = wrapText(settle, width, "label-second", type);
  if (whole.length <= most) return whole;
  return wrapToLines(settle.replace(/(\.) .*$/s, "$1"), width, most, "label-second", type);
}

/** A value between the entries of a curve, by straight lines; the ends hold beyond them. */
export function interpolate(at: readonly number[], values: readonly number[], where: number): number {
  const next = at.findIndex((position) => position >= where);
  if (next <= 0) return (next === 0 ? values[0] : values.at(-1)) ?? Number.NaN;
  const [x0 = 0, x1 = 0] = [at[next - 1], at[next]];
  const [y0 = 0, y1 = 0] = [values[next - 1], values[next]];
  return y0 + ((y1 - y0) * (where - x0)) / (x1 - x0 || 1);
}

function describe(effect: FaultEffect, now: number, format: FormatFigure): string {
  const chosen = (["toe", "camber"] as const).flatMap((quantity) => chooseCurve(effect, quantity) ?? []);
  const said = chosen.map((curve) => {
    const name = curve.quantity.replace("-", " ");
    if (!curve.drawable) return `${name} is not drawn: ${curve.settle ?? "which way it runs is not sure"}`;
    const figures = effect.figures.filter(({ key, signSure }) => key.startsWith(curve.quantity) && signSure);
    const values = figures.map((figure) => `${figure.label} ${format(figure)}`);
    return [`${name} over travel, held at ${formatSigned(now, 0)} mm`, ...values].join("; ");
  });
  return `${said.join(". ")}.`;
}
