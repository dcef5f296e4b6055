import { cross, dot, scale, subtract, unitVector, type Vector } from "#numeric";
import type { DirectionIn, Radians } from "#quantity";

/** From which an axis is called upright: half a right angle. */
const UPRIGHT = Math.SQRT1_2;

/**
 * Direction across a bush's axis from which clocking is counted, a unit vector: up, or of an axis that is more upright than
 * level forward. `axis` has any length but zero.
 */
function clockingZero(axis: Vector): readonly [axis: Vector, zero: Vector] {
  const a = unitVector(axis);
  const from: Vector = Math.abs(a[2]) > UPRIGHT ? [1, 0, 0] : [0, 0, 1];
  return [a, unitVector(subtract(from, scale(a, dot(from, a))))];
}

/** Direction of a bush's voids across its axis: turned from up (or forward) about the axis as given, right-handed. */
export function directionOfClocking(axis: DirectionIn<"vehicle">, clocking: Radians): DirectionIn<"vehicle"> {
  const [a, zero] = clockingZero(axis);
  const quarter = cross(a, zero);
  const [c, s] = [Math.cos(clocking), Math.sin(clocking)];
  return [0, 1, 2].map((i) => c * (zero[i] as number) + s * (quarter[i] as number)) as unknown as Vector;
}

/** Clocking of a direction about a bush's axis, -pi to pi; the inverse of directionOfClocking. */
export function clockingOfDirection(axis: DirectionIn<"vehicle">, direction: DirectionIn<"vehicle">): Radians {
  const [a, zero] = clockingZero(axis);
  return Math.atan2(dot(direction, cross(a, zero)), dot(direction, zero));
}
