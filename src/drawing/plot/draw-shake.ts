import type { Shake } from "#casework";
import { kmPerHourFromMetresPerSecond, mmFromMetres } from "#quantity";
import type { Box } from "../labels/crossing.ts";
import { polygon, polyline, type Spot } from "../path.ts";
import type { Mark, Scene, TypeScale } from "../scene.ts";
import { hairline, thinLine } from "../symbols/look.ts";
import { stateColours, strokes } from "../tokens.ts";
import { LEFT, type Plot, placeBeside, RIGHT } from "./place-beside.ts";
import { niceAxis } from "./ticks.ts";

export interface ShakeOptions {
  readonly width: number;
  readonly height: number;
  readonly type?: TypeScale;
}

const TOP = 40;
const FOOT = 58;
const NAMES = { sound: "sound", leaked: "fluid gone" } as const;
const COLOURS = { sound: stateColours.sound, leaked: stateColours.torn } as const;

/**
 * How far a wheel shakes along the road under light braking, over the road speed: the sound bush in ink, the one without
 * its fluid in the colour of a finding, each with its band, the speed where that one is worst as a line across, and the
 * one at which it is felt, where somebody said it, with a point on either line.
 */
export function drawShake(shake: Shake, { width, height, type = "desk" }: ShakeOptions): Scene {
  const speeds = shake.speeds.map(kmPerHourFromMetresPerSecond);
  const [from, to] = [speeds[0] ?? 0, speeds.at(-1) ?? 1];
  const area = { x: LEFT, width: width - LEFT - RIGHT, top: TOP, bottom: height - FOOT };
  const most = mmFromMetres(Math.max(...shake.lines.flatMap(({ values, high }) => [...values, ...high])));
  const upright = niceAxis([0, most], Math.max(3, Math.min(7, Math.floor((area.bottom - area.top) / 60))));
  const toX = (kmh: number): number => area.x + ((kmh - from) / (to - from)) * area.width;
  const toY = (mm: number): number => area.bottom - (mm / upright.high) * (area.bottom - area.top);
  const plot: Plot = { ...area, toX, toY };
  const spotsOf = (metres: readonly number[]): readonly Spot[] =>
    metres.map((value, i) => [toX(speeds[i] ?? 0), toY(mmFromMetres(value))]);
  const lines = shake.lines.map(({ state, values, low, high }) => ({
    state,
    spots: spotsOf(values),
    band: polygon([...spotsOf(low), ...spotsOf(high).toReversed()]),
  }));
  const worst = kmPerHourFromMetresPerSecond(shake.worst.speed);
  const taken: Box[] = [{ x: toX(worst) - 10, y: area.top, width: 20, height: area.bottom - area.top }];
  const marks: Mark[] = [
    ...drawFrame(plot, upright, niceAxis([from, to], Math.max(3, Math.min(9, Math.floor(area.width / 70))))),
    ...lines.map(
      ({ state, band }): Mark => ({
        kind: "path",
        d: band,
        fill: COLOURS[state],
        opacity: state === "sound" ? 0.1 : 0.16,
      }),
    ),
    ...lines.map(
      ({ state, spots }): Mark => ({
        kind: "path",
        d: polyline(spots),
        stroke: { colour: COLOURS[state], width: strokes.curve, cap: "round" },
      }),
    ),
    ...drawWorst(worst, shake.worst.atEnd, plot),
    ...(shake.felt === null ? [] : drawFelt(kmPerHourFromMetresPerSecond(shake.felt), shake, plot)),
  ];
  for (const line of lines)
    marks.push(...placeBeside([NAMES[line.state]], line.spots, lines, plot, COLOURS[line.state], type, taken));
  return {
    width,
    height,
    type,
    title: "Shake along the road over the road speed",
    description: `${shake.sentence} Bands hold 95 %.`,
    marks,
    targets: [],
  };
}

/** Both axes with their ticks: speed at the foot, movement upright, each with its unit at its end. */
function drawFrame(
  plot: Plot,
  upright: ReturnType<typeof niceAxis>,
  foot: ReturnType<typeof niceAxis>,
): readonly Mark[] {
  const right = plot.x + plot.width;
  const across = (y: number): string =>
    polyline([
      [plot.x, y],
      [right, y],
    ]);
  const inside = foot.ticks.filter((tick) => plot.toX(tick) >= plot.x - 0.5 && plot.toX(tick) <= right + 0.5);
  return [
    ...upright.ticks.flatMap((tick, i): Mark[] =>
      tick < 0
        ? []
        : [
            { kind: "path", d: across(plot.toY(tick)), stroke: tick === 0 ? thinLine : hairline },
            {
              kind: "text",
              x: plot.x - 10,
              y: plot.toY(tick) + 4.5,
              text: upright.words[i] ?? "",
              style: "note",
              anchor: "end",
            },
          ],
    ),
    ...inside.flatMap((tick): Mark[] => {
      const x = plot.toX(tick);
      const d = polyline([
        [x, plot.bottom],
        [x, plot.bottom + 5],
      ]);
      return [
        { kind: "path", d, stroke: thinLine },
        { kind: "text", x, y: plot.bottom + 20, text: String(tick), style: "note", anchor: "middle" },
      ];
    }),
    { kind: "text", x: 24, y: 20, text: "wheel to and fro along the road, ±mm", style: "label-second" },
    { kind: "text", x: right, y: plot.bottom + 42, text: "road speed, km/h", style: "label-second", anchor: "end" },
  ];
}

/** The speed where the wheel shakes most without the fluid. */
function drawWorst(kmh: number, atEnd: boolean, plot: Plot): readonly Mark[] {
  const x = plot.toX(kmh);
  const d = polyline([
    [x, plot.top],
    [x, plot.bottom],
  ]);
  const left = x > plot.x + plot.width / 2;
  const text = atEnd ? `${Math.round(kmh)} km/h, the end of what is looked at` : `worst at ${Math.round(kmh)} km/h`;
  return [
    { kind: "path", d, stroke: { colour: "accent", width: 1.6 } },
    {
      kind: "text",
      x: x + (left ? -8 : 8),
      y: plot.top + 12,
      text,
      style: "label-accent",
      anchor: left ? "end" : "start",
      halo: true,
    },
  ];
}

/** The speed at which the driver feels it, with what both lines are there. */
function drawFelt(kmh: number, shake: Shake, plot: Plot): readonly Mark[] {
  const x = plot.toX(kmh);
  const index = shake.speeds.findIndex((speed) => Math.abs(kmPerHourFromMetresPerSecond(speed) - kmh) < 0.5);
  const d = polyline([
    [x, plot.top + 24],
    [x, plot.bottom],
  ]);
  // Away from the worst speed's line, but inside the plot.
  const left =
    (kmh < kmPerHourFromMetresPerSecond(shake.worst.speed) && x > plot.x + 130) || x > plot.x + plot.width - 130;
  return [
    { kind: "path", d, stroke: { ...thinLine, dash: [4, 4] } },
    ...shake.lines.map(
      ({ state, values }): Mark => ({
        kind: "circle",
        cx: x,
        cy: plot.toY(mmFromMetres(values[index] ?? 0)),
        r: 5,
        fill: COLOURS[state],
      }),
    ),
    {
      kind: "text",
      x: x + (left ? -8 : 8),
      y: plot.top + 36,
      text: `felt at ${Math.round(kmh)} km/h`,
      style: "label-second",
      anchor: left ? "end" : "start",
      halo: true,
    },
  ];
}
