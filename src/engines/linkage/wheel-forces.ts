import { add, cross, rotate, type Vector } from "#numeric";
import type { WheelLinkage } from "./corner-linkage.ts";
import type { CornerLoad } from "./elastic-corner.ts";
import type { Pose } from "./pose.ts";

/** Wrench (force, moment about the wheel centre) and how it changes with a step (6 x 6). */
export interface Wrench {
  readonly wrench: readonly number[];
  readonly turning: readonly number[];
}

/** Offset of the contact patch from the wheel centre and its change with a rotation w: 3 x 3, row-major. */
export function contactWithChange(linkage: WheelLinkage, pose: Pose): { offset: Vector; change: readonly number[] } {
  const radius = linkage.wheel.loadedRadius;
  const n = rotate(pose.r, linkage.spinAxis);
  const [x, y, z] = n;
  const h = Math.sqrt(x * x + y * y);
  const [a, b] = [radius / h, (radius * z * z) / h ** 3];
  const offset: Vector = [a * z * x, a * z * y, -radius * h];
  // dn = w x n, so a turn about x moves n by (0, -z, y), about y by (z, 0, -x), about z by (-y, x, 0).
  const change = [
    (a + b) * y * x,
    a * (z * z - x * x) - b * x * x,
    -a * z * y,
    a * (y * y - z * z) + b * y * y,
    -(a + b) * x * y,
    a * z * x,
    a * z * y,
    -a * z * x,
    0,
  ];
  return { offset, change };
}

/** Forces at the contact patch and the wheel centre as a wrench on the knuckle; wheelLoad upward at the patch. */
export function computeWheelWrench(linkage: WheelLinkage, pose: Pose, load: CornerLoad, wheelLoad: number): Wrench {
  const { offset, change } = contactWithChange(linkage, pose);
  const atPatch: Vector = [-load.braking, load.lateral, wheelLoad];
  const moment = add(cross(offset, atPatch), [0, 0, load.aligning]);
  const turning = new Array<number>(36).fill(0);
  for (let j = 0; j < 3; j++) {
    const dm = cross([change[j] as number, change[3 + j] as number, change[6 + j] as number], atPatch);
    for (let i = 0; i < 3; i++) turning[6 * (i + 3) + j + 3] = dm[i] as number;
  }
  return { wrench: [atPatch[0] + load.drive, atPatch[1], atPatch[2], ...moment], turning };
}
