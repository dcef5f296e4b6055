import type { Spot } from "../path.ts";
import { circlePath, polygon } from "../path.ts";
import type { CarPoint, Projection } from "../projection.ts";
import type { Mark } from "../scene.ts";
import { type Look, strokeOf } from "./look.ts";

export interface BushShape {
  readonly at: CarPoint;
  /** Direction of the bolt, any length. */
  readonly axis: CarPoint;
  /** Outer sleeve, metres. */
  readonly length: number;
  readonly diameter: number;
  readonly hydraulic?: boolean;
}

/** How much longer than the outer sleeve the inner one is, and how thick, metres. */
const SLEEVE_OVERHANG = 0.018;
const SLEEVE_DIAMETER = 0.02;

/**
 * A rubber bush with its sleeve: from the side where its axis lies in the page, as rings where one looks along it.
 * A hydraulic bush carries two dashes of fluid.
 */
export function drawBush(view: Projection, bush: BushShape, look: Look): readonly Mark[] {
  const [cx, cy] = view.spot(bush.at);
  const [ax, ay, az] = [bush.axis[0], bush.axis[1], bush.axis[2] ?? 0];
  const norm = Math.hypot(ax, ay, az) || 1;
  const tip = view.spot([bush.at[0] + ax / norm, bush.at[1] + ay / norm, (bush.at[2] ?? 0) + az / norm]);
  const seen = Math.hypot(tip[0] - cx, tip[1] - cy);
  const stroke = strokeOf(look);
  const s = view.scale;
  if (seen < 0.6 * s) {
    return [
      { kind: "circle", cx, cy, r: (bush.diameter / 2) * s, stroke, fill: "paper" },
      { kind: "circle", cx, cy, r: SLEEVE_DIAMETER * 0.7 * s, stroke, fill: "paper" },
    ];
  }
  const along: Spot = [(tip[0] - cx) / seen, (tip[1] - cy) / seen];
  const box = (length: number, width: number): string =>
    polygon(
      [
        [1, 1],
        [1, -1],
        [-1, -1],
        [-1, 1],
      ].map(([a = 0, b = 0]) => [
        cx + (a * length * along[0] - b * width * along[1]) * (s / 2),
        cy + (a * length * along[1] + b * width * along[0]) * (s / 2),
      ]),
    );
  const marks: Mark[] = [
    { kind: "path", d: box(bush.length + SLEEVE_OVERHANG, SLEEVE_DIAMETER), stroke, fill: "paper" },
    { kind: "path", d: box(bush.length, bush.diameter), stroke, fill: "paper" },
  ];
  if (look.unseen) marks.push({ kind: "path", d: box(bush.length, bush.diameter), fill: "hatch-unseen" });
  if (bush.hydraulic === true) {
    for (const side of [1, -1]) {
      const offset = side * bush.diameter * 0.3 * s;
      const half = bush.length * 0.3 * s;
      const middle: Spot = [cx - along[1] * offset, cy + along[0] * offset];
      marks.push({
        kind: "path",
        d: `M${middle[0] - along[0] * half} ${middle[1] - along[1] * half}L${middle[0] + along[0] * half} ${middle[1] + along[1] * half}`,
        stroke: { colour: look.colour, width: 1, dash: [2, 1.6] },
      });
    }
  }
  return marks;
}

/** A ball joint in its eye: housing and ball. */
export function drawBallJoint(view: Projection, at: CarPoint, radius: number, look: Look): readonly Mark[] {
  const spot = view.spot(at);
  return [
    { kind: "path", d: circlePath(spot, radius * view.scale), stroke: strokeOf(look), fill: "paper" },
    { kind: "path", d: circlePath(spot, radius * 0.55 * view.scale), stroke: { colour: look.colour, width: 0.8 } },
  ];
}
