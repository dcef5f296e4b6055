import type { WheelLinkage } from "./corner-linkage.ts";
import type { Pose } from "./pose.ts";

/** What is prescribed beside the joints: the height of the wheel centre or of the contact patch above design. */
export type Drive = "centre-height" | "contact-height";

/**
 * Offset of the contact patch from the wheel centre: the lowest point of a rigid thin disc,
 *   c = -rl (e_z - n_z n)/sqrt(1 - n_z^2),  n the spin axis.
 * Writes [c_x, c_y, c_z, c_z at design, -, -] and returns the array.
 */
export function computeContactOffset(linkage: WheelLinkage, pose: Pose, out: Float64Array): Float64Array {
  const n0 = linkage.spinAxis;
  const r = pose.r;
  const nx = (r[0] as number) * n0[0] + (r[1] as number) * n0[1] + (r[2] as number) * n0[2];
  const ny = (r[3] as number) * n0[0] + (r[4] as number) * n0[1] + (r[5] as number) * n0[2];
  const nz = (r[6] as number) * n0[0] + (r[7] as number) * n0[1] + (r[8] as number) * n0[2];
  const radius = linkage.wheel.loadedRadius;
  const h = Math.sqrt(nx * nx + ny * ny);
  out[0] = (radius * nz * nx) / h;
  out[1] = (radius * nz * ny) / h;
  out[2] = -radius * h;
  out[3] = -radius * Math.hypot(n0[0], n0[1]);
  return out;
}
