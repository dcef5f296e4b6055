import { add, type Vector } from "#numeric";
import type { CornerGeometry } from "./geometry.ts";
import { type Anchor, GROUND, type Measure, type Mechanism, PointTable } from "./mechanism.ts";

/** The body number of the knuckle in every corner built here. */
export const KNUCKLE = 0;

/** Any mechanism whose first body carries a wheel. */
export interface WheelLinkage {
  readonly mechanism: Mechanism;
  readonly wheel: CornerGeometry["wheel"];
  /** Unit spin axis of the wheel at design, outboard. */
  readonly spinAxis: Vector;
}

/** A corner as a mechanism of one body, with what is needed to speak of its wheel. */
export interface CornerLinkage extends WheelLinkage {
  readonly geometry: CornerGeometry;
}

/** Spin axis from camber and toe (radians): (sin toe cos camber, cos toe cos camber, -sin camber). */
export function computeSpinAxis(camber: number, toe: number): Vector {
  return [Math.sin(toe) * Math.cos(camber), Math.cos(toe) * Math.cos(camber), -Math.sin(camber)];
}

/**
 * Turns a corner's geometry into one knuckle body held by scalar constraints: one per link, two for a strut line
 * that keeps passing through its top, three (or two, with a free axis) for a trailing-arm bush.
 * The geometry must have been checked (checkCornerGeometry); lengths in metres, vehicle frame.
 */
export function buildCornerLinkage(geometry: CornerGeometry): CornerLinkage {
  const table = new PointTable();
  const constraints: Measure[] = [];
  const ground = (point: number, onRack = false): Anchor => ({ body: GROUND, point, onRack });
  const knuckle = (point: number): Anchor => ({ body: KNUCKLE, point, onRack: false });
  for (const link of geometry.links) {
    const inner = table.index(link.inner, `${link.name}.inner`);
    const outer = table.index(link.outer, `${link.name}.outer`);
    constraints.push({ kind: "distance", joint: link.name, a: ground(inner, link.steered), b: knuckle(outer) });
  }
  if (geometry.strut) {
    const top = table.index(geometry.strut.top, "strut.top");
    const axisPoint = table.index(geometry.strut.axisPoint, "strut.axis_point");
    for (const which of [0, 1] as const)
      constraints.push({
        kind: "offset",
        joint: "strut",
        a: knuckle(axisPoint),
        b: ground(top),
        direction: { kind: "between", from: axisPoint, to: top },
        carrier: KNUCKLE,
        which,
      });
  }
  if (geometry.trailingArm) {
    const bush = table.index(geometry.trailingArm.bush, "trailing_arm.bush");
    const along: Vector = geometry.trailingArm.freeAxis ?? [0, 1, 0];
    for (const which of geometry.trailingArm.freeAxis ? ([0, 1] as const) : ([0, 1, 2] as const))
      constraints.push({
        kind: "offset",
        joint: "trailing_arm",
        a: ground(bush),
        b: knuckle(bush),
        direction: { kind: "given", vector: along },
        carrier: GROUND,
        which,
      });
  }
  return {
    geometry,
    wheel: geometry.wheel,
    mechanism: { points: table.points, pointNames: table.names, origins: [geometry.wheel.centre], constraints },
    spinAxis: computeSpinAxis(geometry.wheel.camber, geometry.wheel.toe),
  };
}

/** Where a design point of the knuckle stands at a pose given by the wheel-centre shift and a row-major rotation. */
export function carryPoint(centre: Vector, shift: Vector, rotation: ArrayLike<number>, point: Vector): Vector {
  const p: Vector = [point[0] - centre[0], point[1] - centre[1], point[2] - centre[2]];
  const r = rotation as ArrayLike<number> & { [i: number]: number };
  const row = (i: number): number =>
    (r[3 * i] as number) * p[0] + (r[3 * i + 1] as number) * p[1] + (r[3 * i + 2] as number) * p[2];
  return add(add(centre, shift), [row(0), row(1), row(2)]);
}
