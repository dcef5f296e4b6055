import { polygon, polyline } from "../path.ts";
import { type CarPoint, onSide, type Projection } from "../projection.ts";
import type { Mark } from "../scene.ts";
import { hairline, inkLine, type Look, strokeOf } from "./look.ts";

export interface WheelShape {
  readonly centre: CarPoint;
  readonly side: "left" | "right";
  readonly tyreRadius: number;
  readonly tyreWidth: number;
  readonly rimRadius: number;
  readonly rimWidth: number;
  /** Mounting face outboard of the wheel's middle plane, metres. */
  readonly offset: number;
}

/** Tyre section: share of the wall height from the rim, share of half the tyre width (inboard half, outside then inside). */
const TYRE_OUTSIDE = [
  [0.05, -0.83],
  [0.12, -0.9],
  [0.22, -0.965],
  [0.4, -1],
  [0.6, -0.99],
  [0.78, -0.955],
  [0.9, -0.88],
  [0.97, -0.76],
  [0.99, -0.45],
  [1, 0],
] as const;
const TYRE_INSIDE = [
  [0.86, 0],
  [0.85, -0.45],
  [0.83, -0.66],
  [0.76, -0.79],
  [0.6, -0.875],
  [0.4, -0.9],
  [0.23, -0.855],
  [0.08, -0.73],
] as const;
/** Rim section: metres outboard of the rim radius, share of half the rim width. */
const RIM = [
  [0.016, -1.02],
  [0.005, -0.98],
  [0.001, -0.69],
  [-0.02, -0.47],
  [-0.022, 0.1],
  [-0.003, 0.39],
  [0, 0.7],
  [0.005, 0.98],
  [0.016, 1.02],
] as const;

/** Wheel and tyre cut at hub height, as seen from below: two sections of tyre and rim, the spoke to the hub, the sides as hairlines. */
export function drawWheel(view: Projection, wheel: WheelShape, look: Look): readonly Mark[] {
  const left = Math.abs(wheel.centre[1]);
  /** u ahead of the wheel centre, v outboard of its middle plane. */
  const place = (u: number, v: number) => view.spot(onSide(wheel.side, [wheel.centre[0] + u, left + v]));
  const half = wheel.tyreWidth / 2;
  const wall = wheel.tyreRadius - wheel.rimRadius;
  const rimHalf = wheel.rimWidth / 2;
  const marks: Mark[] = [];
  for (const edge of [-half, half]) {
    const d = polyline([place(-wheel.tyreRadius * 0.8, edge), place(wheel.tyreRadius * 0.8, edge)]);
    marks.push({ kind: "path", d, stroke: hairline });
  }
  for (const sign of [1, -1]) {
    const tyre = ([f, v]: readonly [number, number], flip: number) =>
      place(sign * (wheel.rimRadius + f * wall), flip * v * half);
    const section = [
      ...TYRE_OUTSIDE.map((p) => tyre(p, 1)),
      ...TYRE_OUTSIDE.toReversed().map((p) => tyre(p, -1)),
      ...TYRE_INSIDE.toReversed().map((p) => tyre(p, -1)),
      ...TYRE_INSIDE.map((p) => tyre(p, 1)),
    ];
    marks.push({ kind: "path", d: polygon(section), stroke: strokeOf(look), fill: "hatch-cut" });
    const rim = RIM.map(([u, v]) => place(sign * (wheel.rimRadius + u), v * rimHalf));
    marks.push({ kind: "path", d: polyline(rim), stroke: inkLine });
    const spoke = polyline([
      place(sign * (wheel.rimRadius - 0.012), rimHalf * 0.25),
      place(sign * wheel.rimRadius * 0.69, wheel.offset + 0.021),
      place(sign * wheel.rimRadius * 0.36, wheel.offset + 0.015),
      place(sign * wheel.rimRadius * 0.325, wheel.offset),
      place(0, wheel.offset),
    ]);
    marks.push({ kind: "path", d: spoke, stroke: inkLine });
  }
  return marks;
}
