import type { Spot } from "../path.ts";

export type Segment = readonly [from: Spot, to: Spot];

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Distance of a spot from the line through a segment, with the side of the line it lies on as its sign. */
const distanceFromLine = (spot: Spot, [a, b]: Segment): number => {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
  return ((b[0] - a[0]) * (spot[1] - a[1]) - (b[1] - a[1]) * (spot[0] - a[0])) / length;
};

/** Nearer than this two things touch, page units. */
const TOUCHING = 1e-6;

/** True where two segments cut each other inside both; touching ends do not count. */
export function segmentsCross(first: Segment, second: Segment): boolean {
  const apart = (segment: Segment, line: Segment): boolean => {
    const [p, q] = [distanceFromLine(segment[0], line), distanceFromLine(segment[1], line)];
    return (p > TOUCHING && q < -TOUCHING) || (p < -TOUCHING && q > TOUCHING);
  };
  return apart(first, second) && apart(second, first);
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
  return (
    a.x + a.width > b.x + TOUCHING &&
    b.x + b.width > a.x + TOUCHING &&
    a.y + a.height > b.y + TOUCHING &&
    b.y + b.height > a.y + TOUCHING
  );
}

/** True where a segment runs through a box or ends inside it. */
export function crossesBox([from, to]: Segment, { x, y, width, height }: Box): boolean {
  // The part of the segment between each pair of sides, as shares of its length (slab by slab).
  let [enter, leave] = [0, 1];
  const slabs = [
    [from[0], to[0] - from[0], x, x + width],
    [from[1], to[1] - from[1], y, y + height],
  ] as const;
  for (const [start, run, low, high] of slabs) {
    if (Math.abs(run) < TOUCHING) {
      if (start <= low + TOUCHING || start >= high - TOUCHING) return false;
      continue;
    }
    const [a, b] = [(low - start) / run, (high - start) / run];
    enter = Math.max(enter, Math.min(a, b));
    leave = Math.min(leave, Math.max(a, b));
  }
  return leave - enter > TOUCHING;
}
