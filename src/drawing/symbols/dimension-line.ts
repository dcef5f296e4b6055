import { polygon, polyline, type Spot } from "../path.ts";
import type { Mark, TextStyle } from "../scene.ts";
import { hairline } from "./look.ts";

/** A slim arrow head with its tip at a spot, pointing along `angle` (radians clockwise from page right). */
export function drawArrow(tip: Spot, angle: number, length = 7): Mark {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const side = (width: number): Spot => [tip[0] - length * c + width * s, tip[1] - length * s - width * c];
  return { kind: "path", d: polygon([tip, side(2), side(-2)]), fill: "ink3" };
}

export interface DimensionShape {
  readonly from: Spot;
  readonly to: Spot;
  readonly label: string;
  readonly style?: TextStyle;
  /** Room left in the middle of the line for the label, page units; 0 = label above the line. */
  readonly gap?: number;
  /** Page units from the line to the base line of the label; negative = above. */
  readonly offset?: number;
}

/** A dimension line with an arrow at each end, its label in a gap or beside the line. */
export function drawDimension(shape: DimensionShape): readonly Mark[] {
  const { from, to, gap = 0 } = shape;
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const angle = Math.atan2(to[1] - from[1], to[0] - from[0]);
  const middle: Spot = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const at = (distance: number): Spot => [from[0] + distance * Math.cos(angle), from[1] + distance * Math.sin(angle)];
  const lines =
    gap > 0 ? [[from, at((length - gap) / 2)] as const, [at((length + gap) / 2), to] as const] : [[from, to] as const];
  const degrees = (angle * 180) / Math.PI;
  const upright = Math.abs(degrees) <= 90 ? degrees : degrees + 180;
  const rotate = Math.abs(upright) < 0.01 || Math.abs(upright - 360) < 0.01 ? {} : { rotate: upright };
  return [
    ...lines.map((ends): Mark => ({ kind: "path", d: polyline(ends), stroke: hairline })),
    drawArrow(from, angle + Math.PI),
    drawArrow(to, angle),
    {
      kind: "text",
      x: middle[0],
      y: middle[1] + (shape.offset ?? (gap > 0 ? 4.5 : -5)),
      text: shape.label,
      style: shape.style ?? "dimension",
      anchor: "middle",
      halo: true,
      ...rotate,
    },
  ];
}
