import { norm, scale, type Vector } from "#numeric";

/**
 * Poses of all moving bodies: body k has translation t[3k..] of its origin and row-major rotation r[9k..] from design.
 * A step is (v, w) per body: the origin moves by v, the body turns by exp(w) in the vehicle frame.
 */
export interface Pose {
  readonly t: Float64Array;
  readonly r: Float64Array;
}

/** The design pose of n bodies. */
export function designPose(n: number): Pose {
  const pose: Pose = { t: new Float64Array(3 * n), r: new Float64Array(9 * n) };
  for (let k = 0; k < n; k++) for (const d of [0, 4, 8]) pose.r[9 * k + d] = 1;
  return pose;
}

export function copyPose(from: Pose, to: Pose): void {
  to.t.set(from.t);
  to.r.set(from.r);
}

export const clonePose = (pose: Pose): Pose => ({ t: pose.t.slice(), r: pose.r.slice() });

/** Applies a step of 6 numbers per body (v then w), scaled, to the pose in place; w goes through the exponential map. */
export function advancePose(pose: Pose, step: Float64Array, factor = 1): void {
  const bodies = pose.t.length / 3;
  for (let k = 0; k < bodies; k++) {
    for (let c = 0; c < 3; c++)
      pose.t[3 * k + c] = (pose.t[3 * k + c] as number) + factor * (step[6 * k + c] as number);
    turn(
      pose.r,
      9 * k,
      factor * (step[6 * k + 3] as number),
      factor * (step[6 * k + 4] as number),
      factor * (step[6 * k + 5] as number),
    );
  }
}

/** R becomes exp(w) R by Rodrigues' formula. */
function turn(r: Float64Array, o: number, x: number, y: number, z: number): void {
  const a2 = x * x + y * y + z * z;
  let s = 1 - (a2 / 6) * (1 - (a2 / 20) * (1 - (a2 / 42) * (1 - a2 / 72)));
  let c = 0.5 * (1 - (a2 / 12) * (1 - (a2 / 30) * (1 - (a2 / 56) * (1 - a2 / 90))));
  // Below 0.1 rad these series are exact to rounding; steps are mostly smaller.
  if (a2 > 0.01) {
    const a = Math.sqrt(a2);
    s = Math.sin(a) / a;
    c = (1 - Math.cos(a)) / a2;
  }
  const m00 = 1 - c * (y * y + z * z);
  const m01 = c * x * y - s * z;
  const m02 = c * x * z + s * y;
  const m10 = c * x * y + s * z;
  const m11 = 1 - c * (x * x + z * z);
  const m12 = c * y * z - s * x;
  const m20 = c * x * z - s * y;
  const m21 = c * y * z + s * x;
  const m22 = 1 - c * (x * x + y * y);
  for (let j = 0; j < 3; j++) {
    const p = r[o + j] as number;
    const q = r[o + 3 + j] as number;
    const w = r[o + 6 + j] as number;
    r[o + j] = m00 * p + m01 * q + m02 * w;
    r[o + 3 + j] = m10 * p + m11 * q + m12 * w;
    r[o + 6 + j] = m20 * p + m21 * q + m22 * w;
  }
}

/** Removes the drift of many products: Gram-Schmidt on the rows of each rotation, in place. */
export function orthonormalise({ r }: Pose): void {
  for (let o = 0; o < r.length; o += 9) {
    const p0 = r[o] as number;
    const p1 = r[o + 1] as number;
    const p2 = r[o + 2] as number;
    const q0 = r[o + 3] as number;
    const q1 = r[o + 4] as number;
    const q2 = r[o + 5] as number;
    const a = 1 / Math.sqrt(p0 * p0 + p1 * p1 + p2 * p2);
    const x0 = p0 * a;
    const x1 = p1 * a;
    const x2 = p2 * a;
    const d = x0 * q0 + x1 * q1 + x2 * q2;
    const b0 = q0 - d * x0;
    const b1 = q1 - d * x1;
    const b2 = q2 - d * x2;
    const b = 1 / Math.sqrt(b0 * b0 + b1 * b1 + b2 * b2);
    const y0 = b0 * b;
    const y1 = b1 * b;
    const y2 = b2 * b;
    r[o] = x0;
    r[o + 1] = x1;
    r[o + 2] = x2;
    r[o + 3] = y0;
    r[o + 4] = y1;
    r[o + 5] = y2;
    r[o + 6] = x1 * y2 - x2 * y1;
    r[o + 7] = x2 * y0 - x0 * y2;
    r[o + 8] = x0 * y1 - x1 * y0;
  }
}

/** Rotation vector of a row-major rotation, for turns below half a revolution. */
export function rotationVector(m: ArrayLike<number>): Vector {
  const at = (i: number): number => m[i] as number;
  const double: Vector = [at(7) - at(5), at(2) - at(6), at(3) - at(1)];
  const sine = norm(double) / 2;
  if (sine === 0) return [0, 0, 0];
  return scale(double, Math.atan2(sine, (at(0) + at(4) + at(8) - 1) / 2) / (2 * sine));
}
