import { dot, perpendicularTo, scale, subtract, unitVector, type Vector } from "#numeric";

/**
 * Any suspension as moving bodies and scalar measures between them. A measure is a length or an offset that a joint
 * keeps (kinematics) or resists to change (rubber). The ground (car body) is body -1.
 */
export const GROUND = -1;

/** A point of the design carried by a body (or by the ground). */
export interface Anchor {
  readonly body: number;
  /** Index into Mechanism.points. */
  readonly point: number;
  /** The point moves along +y with the rack. */
  readonly onRack: boolean;
}

/** A line's direction: fixed by two design points, or given; carried by a body or by the ground. */
export type LineDirection =
  | { readonly kind: "given"; readonly vector: Vector }
  | { readonly kind: "between"; readonly from: number; readonly to: number };

/** A line with, where it matters, which way its first cross direction points: toward a given direction. */
export type Direction =
  | LineDirection
  | { readonly kind: "across"; readonly along: LineDirection; readonly toward: Vector };

export type Measure =
  /** Distance between two anchors. */
  | { readonly kind: "distance"; readonly joint: string; readonly a: Anchor; readonly b: Anchor }
  /**
   * Component number `which` of (b - a): which 0 and 1 are the two directions across `direction`, 2 is along it;
   * the directions are carried by `carrier`, which also carries a.
   */
  | {
      readonly kind: "offset";
      readonly joint: string;
      readonly a: Anchor;
      readonly b: Anchor;
      readonly direction: Direction;
      readonly carrier: number;
      readonly which: 0 | 1 | 2;
    };

export interface Mechanism {
  /** Design coordinates in the vehicle frame, metres; coincident points are one point. */
  readonly points: readonly Vector[];
  /** Name of each point ("lower-front.outer"), of the first that stood there. */
  readonly pointNames: readonly string[];
  /** Reference point of each moving body in design; its pose is the motion of this point and a rotation about it. */
  readonly origins: readonly Vector[];
  /** What the joints keep: 6 per body less one for the travel. */
  readonly constraints: readonly Measure[];
}

/** Collects points so that equal coordinates become one point, named after the first. */
export class PointTable {
  readonly points: Vector[] = [];
  readonly names: string[] = [];
  private readonly seen = new Map<string, number>();

  /** Index of the point with these coordinates, added if it is new. */
  index(at: Vector, name: string): number {
    const key = `${at[0]},${at[1]},${at[2]}`;
    const known = this.seen.get(key);
    if (known !== undefined) return known;
    const index = this.points.length;
    this.points.push(at);
    this.names.push(name);
    this.seen.set(key, index);
    return index;
  }
}

/** The unit vector of a direction at design. */
export function designDirection(direction: Direction, points: readonly Vector[]): Vector {
  if (direction.kind === "across") return designDirection(direction.along, points);
  if (direction.kind === "given") return unit(direction.vector);
  const a = points[direction.from] as Vector;
  const b = points[direction.to] as Vector;
  return unit([b[0] - a[0], b[1] - a[1], b[2] - a[2]]);
}

/** Two unit vectors across and the one along a direction at design: right-handed, [first, second, along]. */
export function designTriad(direction: Direction, points: readonly Vector[]): readonly [Vector, Vector, Vector] {
  const along = designDirection(direction, points);
  const first = direction.kind === "across" ? directionAcross(along, direction.toward) : perpendicularTo(along);
  const second: Vector = [
    along[1] * first[2] - along[2] * first[1],
    along[2] * first[0] - along[0] * first[2],
    along[0] * first[1] - along[1] * first[0],
  ];
  return [first, second, along];
}

/** Unit vector of a direction's part across a unit axis. */
export function directionAcross(axis: Vector, direction: Vector): Vector {
  return unitVector(subtract(direction, scale(axis, dot(direction, axis))));
}

/** The two design points a direction runs through, or none. */
export function pointsOfDirection(direction: Direction): readonly number[] {
  const line = direction.kind === "across" ? direction.along : direction;
  return line.kind === "between" ? [line.from, line.to] : [];
}

function unit(v: Vector): Vector {
  const n = Math.hypot(v[0], v[1], v[2]);
  return [v[0] / n, v[1] / n, v[2] / n];
}
