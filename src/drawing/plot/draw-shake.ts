import type { Shake } from "#casework";
import { kmPerHourFromMetresPerSecond, mmFromMetres } from "#quantity";
import type { Box } from "../labels/crossing.ts";
import { polyline, type Spot } from "../path.ts";
import type { Mark, Scene, TypeScale } from "../scene.ts";
import { thinLine } from "../symbols/look.ts";
import { drawStateLines, fluidColours, fluidNames, layStateLine } from "./fluid-lines.ts";
import { LEFT, type Plot, placeBeside, RIGHT } from "./place-beside.ts";
import { drawFrame } from "./plot-frame.ts";
import { niceAxis } from "./ticks.ts";

export interface ShakeOptions {
  readonly width: number;
  readonly height: number;
  readonly type?: TypeScale;
}

const TOP = 40;
const FOOT = 58;

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
  const lines = shake.lines.map(({ state, ...line }) => layStateLine(state, line, spotsOf));
  const worst = kmPerHourFromMetresPerSecond(shake.worst.speed);
  const taken: Box[] = [{ x: toX(worst) - 10, y: area.top, width: 20, height: area.bottom - area.top }];
  const marks: Mark[] = [
    ...drawFrame(
      plot,
      { axis: upright, name: "wheel to and fro along the road, ±mm" },
      { axis: niceAxis([from, to], Math.max(3, Math.min(9, Math.floor(area.width / 70)))), name: "road speed, km/h" },
    ),
    ...drawStateLines(lines),
    ...drawWorst(worst, shake.worst.atEnd, plot),
    ...(shake.felt === null ? [] : drawFelt(kmPerHourFromMetresPerSecond(shake.felt), shake, plot)),
  ];
  for (const line of lines)
    marks.push(
      ...placeBeside([fluidNames[line.state]], line.spots, lines, plot, fluidColours[line.state], type, taken),
    );
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
        fill: fluidColours[state],
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
