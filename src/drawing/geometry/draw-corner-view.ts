import type { Axle } from "#vehicle";
import { polygon, polyline, roundedPolygon, type Spot } from "../path.ts";
import { between, type CarPoint } from "../projection.ts";
import type { Mark, Stroke } from "../scene.ts";
import { drawDamper } from "../symbols/damper.ts";
import { hairline, type Look, soundLook, thinLine } from "../symbols/look.ts";
import { drawTube } from "../symbols/tube.ts";
import type { MovedCorner } from "./moved-corner.ts";
import type { GeometryView } from "./views.ts";

export interface WheelSize {
  readonly radius: number;
  readonly rimRadius: number;
  readonly width: number;
}

/** Where a wheel stands: its centre and the unit vector along its spin axis. */
export type StandingWheel = Pick<MovedCorner, "centre" | "spin">;

type Point = readonly [number, number, number];
const full = ([x, y, z]: CarPoint): Point => [x, y, z ?? 0];
const shifted = (p: CarPoint, direction: Point, by: number): CarPoint => [
  p[0] + direction[0] * by,
  p[1] + direction[1] * by,
  (p[2] ?? 0) + direction[2] * by,
];
const cross = (a: Point, b: Point): Point => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const unit = (a: Point): Point => {
  const length = Math.hypot(...a) || 1;
  return [a[0] / length, a[1] / length, a[2] / length];
};

/** Outline of the wheel: a cylinder about its spin axis; circles from the side, a rounded box in the other views. */
export function drawWheelOutline(
  view: GeometryView,
  { spin, centre }: StandingWheel,
  size: WheelSize,
  stroke: Stroke,
): readonly Mark[] {
  const forward = unit(cross(spin, [0, 0, spin[1] > 0 ? 1 : -1]));
  const ahead: Point = forward[0] > 0 ? forward : [-forward[0], -forward[1], -forward[2]];
  const upright = unit(cross(spin, ahead));
  const up: Point = upright[2] > 0 ? upright : [-upright[0], -upright[1], -upright[2]];
  if (view.name === "side") {
    return [size.radius, size.rimRadius].map((radius) => {
      const spots = Array.from({ length: 72 }, (_, i) => {
        const a = (i / 72) * 2 * Math.PI;
        return view.spot(shifted(shifted(centre, ahead, radius * Math.cos(a)), up, radius * Math.sin(a)));
      });
      return { kind: "path", d: polygon(spots), stroke };
    });
  }
  const edge = view.name === "behind" ? up : ahead;
  const corners = [
    [1, -1],
    [1, 1],
    [-1, 1],
    [-1, -1],
  ] as const;
  const spots = corners.map(([a, b]) =>
    view.spot(shifted(shifted(centre, edge, a * size.radius), spin, (b * size.width) / 2)),
  );
  return [{ kind: "path", d: roundedPolygon(spots, 0.034 * view.scale), stroke }];
}

/** A wheel with its links as bare lines, at another travel. */
export function drawGhost(view: GeometryView, moved: MovedCorner, size: WheelSize): readonly Mark[] {
  const lines = moved.links.map((link) => polyline([view.spot(link.inner), view.spot(link.outer)]));
  return [...drawWheelOutline(view, moved, size, hairline), { kind: "path", d: lines.join(""), stroke: hairline }];
}

/** A spring: turns seen from the side as bars in front and thin lines behind, from above as circles. */
export function drawSpring(
  view: GeometryView,
  { seat, top }: MovedCorner["spring"],
  diameter: number,
  wire: number,
): readonly Mark[] {
  if (view.name === "above") {
    return [0, 0.5, 1].flatMap((share) => {
      const [cx, cy] = view.spot(between(seat, top, share));
      return [diameter / 2, diameter / 2 - wire].map(
        (r): Mark => ({ kind: "circle", cx, cy, r: r * view.scale, stroke: thinLine }),
      );
    });
  }
  const axis = unit([top[0] - seat[0], top[1] - seat[1], (top[2] ?? 0) - (seat[2] ?? 0)]);
  const across: Point = view.across ?? (view.name === "behind" ? [0, 1, 0] : [1, 0, 0]);
  const along = axis[0] * across[0] + axis[1] * across[1] + axis[2] * across[2];
  const square = unit([across[0] - along * axis[0], across[1] - along * axis[1], across[2] - along * axis[2]]);
  const turns = 6;
  const half = diameter / 2 - wire / 2;
  return Array.from({ length: turns }, (_, i) => i).flatMap((i): Mark[] => {
    const from = shifted(between(seat, top, i / turns), square, -half);
    const to = shifted(between(seat, top, (i + 0.5) / turns), square, half);
    const next = shifted(between(seat, top, (i + 1) / turns), square, -half);
    return [
      { kind: "path", d: polyline([view.spot(to), view.spot(next)]), stroke: thinLine },
      ...drawTube(view, { runs: [[from, to]], width: wire }, { ...soundLook, weight: 0.9 }),
    ];
  });
}

export interface CornerViewShape {
  readonly moved: MovedCorner;
  readonly size: WheelSize;
  readonly coilDiameter: number;
  readonly wireDiameter: number;
  readonly damperDiameter: number;
  readonly isStrut: boolean;
  readonly footOnKnuckle: boolean;
  /** Name of the link, arm or "trailing-arm" that is at fault. */
  readonly faultyPart: string;
}

/** What a view needs of an axle whose corner has been moved. */
export function cornerShape(axle: Axle, moved: MovedCorner, faultyPart: string): CornerViewShape {
  return {
    moved,
    size: { radius: axle.wheel.loadedRadius, rimRadius: axle.wheel.rimDiameter / 2, width: axle.wheel.tyreWidth },
    coilDiameter: axle.spring.coilDiameter,
    wireDiameter: axle.spring.wireDiameter,
    damperDiameter: axle.damper.tubeDiameter,
    isStrut: axle.strut !== undefined,
    footOnKnuckle: axle.strut !== undefined || axle.damper.seat.on === "knuckle",
    faultyPart,
  };
}

const EYE = 0.024;
const HUB_INBOARD = 0.066;
const faultyLook: Look = { weight: 2, colour: "accent", unseen: false };

interface Drawn {
  readonly depth: number;
  readonly marks: readonly Mark[];
}

/** One view of the corner: what lies farther from the eye first; the faulty part in the accent. */
export function drawCornerView(view: GeometryView, shape: CornerViewShape): readonly Mark[] {
  const { moved, size } = shape;
  const look = (part: string): Look => (part === shape.faultyPart ? faultyLook : soundLook);
  const depth = (points: readonly CarPoint[]): number =>
    points.reduce((sum, p) => sum + view.depth(p), 0) / Math.max(points.length, 1);
  const hub = shifted(moved.centre, moved.spin, -HUB_INBOARD);
  const groups = [...new Set(moved.links.map((link) => link.arm ?? link.name))];
  const links = groups.map((name): Drawn => {
    const own = moved.links.filter((link) => (link.arm ?? link.name) === name);
    const eyes = own.flatMap(({ inner, outer }) => [
      { at: inner, radius: EYE + (name === shape.faultyPart ? 0.006 : 0) },
      { at: outer, radius: EYE - 0.003 },
    ]);
    const width = Math.min(Math.max(...own.map((link) => link.width)), 0.046);
    const runs = own.map(({ inner, outer }) => [inner, outer]);
    return { depth: depth(runs.flat()), marks: drawTube(view, { runs, width, eyes }, look(name)) };
  });
  const arm: Drawn[] =
    moved.trailingBush === null
      ? []
      : [
          {
            depth: depth([moved.trailingBush, hub]),
            marks: drawTube(
              view,
              { runs: [[moved.trailingBush, hub]], width: 0.05, eyes: [{ at: moved.trailingBush, radius: 0.034 }] },
              look("trailing-arm"),
            ),
          },
        ];
  const knuckle: Drawn = {
    depth: depth([hub]),
    marks: drawTube(
      view,
      {
        runs: [...moved.links.map(({ outer }) => outer), ...(shape.footOnKnuckle ? [moved.damper.foot] : [])].map(
          (at) => [at, hub],
        ),
        width: 0.04,
        eyes: [{ at: hub, radius: 0.046 }],
      },
      soundLook,
    ),
  };
  const spring: Drawn = {
    depth: depth([moved.spring.seat, moved.spring.top]),
    marks: drawSpring(view, moved.spring, shape.coilDiameter, shape.wireDiameter),
  };
  const { foot, top } = moved.damper;
  const damper: Drawn = {
    depth: depth([foot, top]) + 0.001,
    marks: drawDamper(
      view,
      { foot, top, tubeDiameter: shape.damperDiameter, eye: shape.isStrut ? 0 : 0.022 },
      soundLook,
    ),
  };
  const drawn = [...links, ...arm, knuckle, spring, damper].toSorted((a, b) => a.depth - b.depth);
  const [cx, cy]: Spot = view.spot(full(moved.centre));
  const crossMark = `M${cx - 9} ${cy}H${cx + 9}M${cx} ${cy - 9}V${cy + 9}`;
  return [
    ...drawWheelOutline(view, moved, size, thinLine),
    ...drawn.flatMap(({ marks }) => marks),
    { kind: "path", d: crossMark, stroke: { colour: "ink", width: 1 } },
  ];
}
