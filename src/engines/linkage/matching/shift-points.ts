import { add, type Vector } from "#numeric";
import { buildCornerLinkage } from "../corner-linkage.ts";
import type { CornerGeometry } from "../geometry.ts";

/**
 * The geometry with each point of its mechanism moved by its own shift (metres, in the order of the mechanism's points);
 * joints that stand in one place stay together. Wheel, spring and damper stay, a seat on a link goes with the link.
 */
export function shiftPoints(geometry: CornerGeometry, shifts: readonly Vector[]): CornerGeometry {
  const { points } = buildCornerLinkage(geometry).mechanism;
  const moved = (p: Vector): Vector => {
    const i = points.findIndex((q) => q[0] === p[0] && q[1] === p[1] && q[2] === p[2]);
    return i < 0 ? p : add(p, shifts[i] ?? [0, 0, 0]);
  };
  const { strut, trailingArm } = geometry;
  return {
    ...geometry,
    links: geometry.links.map((l) => ({ ...l, inner: moved(l.inner), outer: moved(l.outer) })),
    ...(strut ? { strut: { top: moved(strut.top), axisPoint: moved(strut.axisPoint) } } : {}),
    ...(trailingArm ? { trailingArm: { ...trailingArm, bush: moved(trailingArm.bush) } } : {}),
  };
}
