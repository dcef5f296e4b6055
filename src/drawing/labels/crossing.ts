import type { Spot } from "../path.ts";

export type Segment = readonly [from: Spot, to: Spot];

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const side = (a: Spot, b: Spot, c: Spot): number => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

/** True where two segments cut each other inside both; touching ends do not count. */
export function segmentsCross([a, b]: Segment, [c, d]: Segment): boolean {
  const tolerance = 1e-9;
  const [p, q] = [side(a, b, c), side(a, b, d)];
  const [r, s] = [side(c, d, a), side(c, d, b)];
  return p * q < -tolerance && r * s < -tolerance;
}

/** Least distance from a spot to a segment. */
export function distanceToSegment(spot: Spot, [a, b]: Segment): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const square = dx * dx + dy * dy;
  const share = square === 0 ? 0 : Math.min(1, Math.max(0, ((spot[0] - a[0]) * dx + (spot[1] - a[1]) * dy) / square));
  return Math.hypot(spot[0] - a[0] - share * dx, spot[1] - a[1] - share * dy);
}

/** True where two boxes share area; touching sides do not count. */
export function boxesOverlap(a: Box, b: Box): boolean {
  const tolerance = 1e-6;
  return (
    a.x + a.width > b.x + tolerance &&
    b.x + b.width > a.x + tolerance &&
    a.y + a.height > b.y + tolerance &&
    b.y + b.height > a.y + tolerance
  );
}
