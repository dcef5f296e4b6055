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
  const h = Math.hypot(n[0], n[1]);
  const offset: Vector = [(radius * n[2] * n[0]) / h, (radius * n[2] * n[1]) / h, -radius * h];
  const change = new Array<number>(9).fill(0);
  for (let j = 0; j < 3; j++) {
    const w: Vector = [j === 0 ? 1 : 0, j === 1 ? 1 : 0, j === 2 ? 1 : 0];
    const dn = cross(w, n);
    change[j] = radius * ((dn[2] * n[0] + n[2] * dn[0]) / h + (n[2] * n[0] * n[2] * dn[2]) / h ** 3);
    change[3 + j] = radius * ((dn[2] * n[1] + n[2] * dn[1]) / h + (n[2] * n[1] * n[2] * dn[2]) / h ** 3);
    change[6 + j] = (radius * n[2] * dn[2]) / h;
  }
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
