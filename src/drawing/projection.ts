import type { Spot } from "./path.ts";

/** A point of the car in metres, vehicle frame; plan views need no height. */
export type CarPoint = readonly [x: number, y: number, z?: number];

/** How points of the car come to lie on the page. */
export interface Projection {
  /** Page units per metre. */
  readonly scale: number;
  readonly spot: (point: CarPoint) => Spot;
}

/** The same point on the other side of the car where the side is the right one; the left stays as it is. */
export function onSide(side: "left" | "right", [x, y, z]: CarPoint): CarPoint {
  return side === "left" ? [x, y, z ?? 0] : [x, -y, z ?? 0];
}

/** The point at `share` of the way from one point to the other. */
export function between(from: CarPoint, to: CarPoint, share: number): CarPoint {
  const z = (from[2] ?? 0) + ((to[2] ?? 0) - (from[2] ?? 0)) * share;
  return [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share, z];
}
