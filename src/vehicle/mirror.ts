import type { DirectionIn, PointIn } from "#quantity";
import type { Side } from "./family.ts";

/** A point given on the left side, as it lies on the asked side: the right is the mirror image in the plane y = 0. */
export function pointOnSide(left: PointIn<"vehicle">, side: Side): PointIn<"vehicle"> {
  return [left[0], side === "left" ? left[1] : -left[1], left[2]];
}

/**
 * A direction given on the left side, as it points on the asked side.
 * The axis of a bush is a line, not a rotation, so it mirrors as a plain direction: its y changes sign.
 */
export function directionOnSide(left: DirectionIn<"vehicle">, side: Side): DirectionIn<"vehicle"> {
  return [left[0], side === "left" ? left[1] : -left[1], left[2]];
}
