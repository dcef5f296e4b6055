/** A vector of three plain numbers; the frame it is measured in stands where it is used. */
export type Vector = readonly [number, number, number];

export const add = (a: Vector, b: Vector): Vector => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const subtract = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const scale = (a: Vector, s: number): Vector => [a[0] * s, a[1] * s, a[2] * s];
export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
export const norm = (a: Vector): number => Math.hypot(a[0], a[1], a[2]);
/** The vector divided by its length; the caller has made sure that the length is not zero. */
export const unitVector = (a: Vector): Vector => scale(a, 1 / norm(a));
/** Row-major 3 by 3 matrix times vector. */
export const rotate = (m: ArrayLike<number>, a: Vector): Vector => [
  (m[0] as number) * a[0] + (m[1] as number) * a[1] + (m[2] as number) * a[2],
  (m[3] as number) * a[0] + (m[4] as number) * a[1] + (m[5] as number) * a[2],
  (m[6] as number) * a[0] + (m[7] as number) * a[1] + (m[8] as number) * a[2],
];
/** The mirror image in the middle plane of the car: y changes sign. */
export const mirrorY = (a: Vector): Vector => [a[0], -a[1], a[2]];

/** A unit vector at right angles to the unit vector `a`, made with the axis that `a` is least along. */
export function perpendicularTo(a: Vector): Vector {
  const ax = Math.abs(a[0]);
  const ay = Math.abs(a[1]);
  const az = Math.abs(a[2]);
  const other: Vector = ax <= ay && ax <= az ? [1, 0, 0] : ay <= az ? [0, 1, 0] : [0, 0, 1];
  return unitVector(cross(a, other));
}
