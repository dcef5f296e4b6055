import type { Scene } from "./scene.ts";
import { LEAST_TARGET } from "./tokens.ts";

/** A press counts for a drawn place up to so far from it: a thumb's width in all. */
const REACH = LEAST_TARGET / 2;

/**
 * Id of the drawn place a press at (x, y) means: the nearest one within a thumb's reach.
 * @param scene x and y in its own page units
 * @returns null where nothing drawn is near
 */
export function nearestPoint({ points = [] }: Scene, x: number, y: number): string | null {
  const near = points
    .map((point) => ({ id: point.id, distance: Math.hypot(point.x - x, point.y - y) }))
    .filter(({ distance }) => distance <= REACH)
    .toSorted((a, b) => a.distance - b.distance);
  return near[0]?.id ?? null;
}
