import type { BandedLine, Shake } from "#casework";
import { degreesFromRadians, perMmFromNewtonsPerMetre } from "#quantity";
import type { Box } from "../labels/crossing.ts";
import { polyline, type Spot } from "../path.ts";
import type { Mark, Scene, TypeScale } from "../scene.ts";
import { drawStateLines, fluidColours, fluidNames, layStateLine } from "./fluid-lines.ts";
import { LEFT, type Plot, placeBeside, RIGHT } from "./place-beside.ts";
import { drawFrame } from "./plot-frame.ts";
import { niceAxis } from "./ticks.ts";

export interface BushOptions {
  readonly width: number;
  readonly height: number;
  readonly type?: TypeScale;
}

const TOP = 36;
const FOOT = 58;
/** Between the two plots, page units. */
const BETWEEN = 60;

/**
 * What a shaker reads of a hydraulic bush alone over 1 to 50 Hz, with its fluid and without: the stiffness over the loss
 * angle, each with its band, and how often the thick place of the disc comes by at the worst speed as a line across both.
 */
export function drawBush({ bush }: Shake, { width, height, type = "desk" }: BushOptions): Scene {
  const { frequencies, lines, worst } = bush;
  const [from, to] = [frequencies[0] ?? 0, frequencies.at(-1) ?? 1];
  const each = (height - TOP - FOOT - BETWEEN) / 2;
  const area = { x: LEFT, width: width - LEFT - RIGHT };
  const toX = (hertz: number): number => area.x + ((hertz - from) / (to - from)) * area.width;
  const foot = niceAxis([from, to], Math.max(3, Math.min(9, Math.floor(area.width / 45))));
  const drawOne = (
    top: number,
    name: string,
    below: string | null,
    lineOf: (line: (typeof lines)[number]) => BandedLine,
    shown: (value: number) => number,
  ): readonly Mark[] => {
    const bottom = top + each;
    const most = shown(Math.max(...lines.flatMap((line) => lineOf(line).high)));
    const upright = niceAxis([0, most], Math.max(2, Math.floor(each / 45)));
    const toY = (value: number): number => bottom - (value / upright.high) * each;
    const plot: Plot = { ...area, top, bottom, toX, toY };
    const spotsOf = (values: readonly number[]): readonly Spot[] =>
      values.map((value, i) => [toX(frequencies[i] ?? 0), toY(shown(value))]);
    const laid = lines.map((line) => layStateLine(line.state, lineOf(line), spotsOf));
    const taken: Box[] = [
      { x: toX(worst) - 6, y: top, width: 12, height: each },
      { x: 0, y: top, width: LEFT, height: each },
    ];
    return [
      ...drawFrame(plot, { axis: upright, name }, { axis: foot, name: below }),
      ...drawStateLines(laid),
      {
        kind: "path",
        d: polyline([
          [toX(worst), top],
          [toX(worst), bottom],
        ]),
        stroke: { colour: "accent", width: 1.6 },
      },
      ...laid.flatMap(({ state, spots }) =>
        placeBeside([fluidNames[state]], spots, laid, plot, fluidColours[state], type, taken),
      ),
    ];
  };
  return {
    width,
    height,
    type,
    title: "The bush alone over the frequency",
    description: describeBush(bush),
    marks: [
      ...drawOne(TOP, "stiffness, N/mm", null, ({ stiffness }) => stiffness, perMmFromNewtonsPerMetre),
      ...drawOne(
        TOP + each + BETWEEN,
        "loss angle, °",
        "shaken so many times a second, Hz",
        ({ lossAngle }) => lossAngle,
        degreesFromRadians,
      ),
    ],
    targets: [],
  };
}

/** Both ends and the worst frequency of every line in words. */
function describeBush({ frequencies, lines, worst }: Shake["bush"]): string {
  const nearest = frequencies.reduce(
    (best, hertz, i) => (Math.abs(hertz - worst) < Math.abs((frequencies[best] ?? 0) - worst) ? i : best),
    0,
  );
  const at = [0, nearest, frequencies.length - 1];
  return lines
    .map(
      ({ state, stiffness, lossAngle }) =>
        `${fluidNames[state]}: ${at
          .map(
            (i) =>
              `at ${frequencies[i]} Hz ${perMmFromNewtonsPerMetre(stiffness.values[i] ?? 0).toFixed(0)} N/mm and ${degreesFromRadians(lossAngle.values[i] ?? 0).toFixed(0)}°`,
          )
          .join(", ")}`,
    )
    .join("; ");
}
