import { computeBar, TravelSweep } from "#engines/linkage";
import { add, cross, dot, scale, subtract, type Vector } from "#numeric";
import type { Family } from "#vehicle";
import type { CornerModel } from "../fault/corner-model.ts";

/** Shear modulus of spring steel, Pa (textbook, from memory). */
export const STEEL_SHEAR = 79e9;
/** A bar leaves its straight middle where it turns this far off it, m (invented). */
const OFF_STRAIGHT = 0.02;

/** A bar is not twisted further than this (from memory), rad: beyond it its path on file is doubted. */
export const MOST_TWIST = 0.35;

/** Twist of a bar and the force it sends to the left wheel, upward positive; null where there is no bar or no lever. */
export function twistOf(
  family: Family,
  axle: "front" | "rear",
  model: CornerModel,
  travel: { readonly left: number; readonly right: number },
): ReturnType<typeof computeBar> | null {
  const { bar } = family[axle];
  const [first, end] = [bar?.path[0], bar?.path.at(-1)];
  if (!bar || !first || !end) return null;
  const far = (point: readonly number[]): number => Math.hypot(...point.map((x, i) => x - (end[i] as number)));
  // A drop link may stand up to a strut or down to a link: it moves with the part away from the bar.
  const moving = far(bar.linkUpper) > far(bar.linkLower) ? bar.linkUpper : bar.linkLower;
  const ratio = riseOf([moving[0], moving[1], moving[2]], model);
  if (ratio === null) return null;
  const middle = bar.path.filter((point) => Math.hypot(point[0] - first[0], point[2] - first[2]) < OFF_STRAIGHT);
  const length = 2 * Math.abs(middle.at(-1)?.[1] ?? 0);
  const lever = Math.hypot(end[0] - first[0], end[2] - first[2]);
  if (!(length > 0) || !(lever > 0)) return null;
  const torsion = (STEEL_SHEAR * Math.PI * bar.diameter ** 4) / (32 * length);
  return computeBar({ torsion, lever, ratio }, travel.left, travel.right);
}

/** Rise of a drop link's moving end per rise of the wheel centre, at ride height: it goes with the link or strut it lies on. */
function riseOf(lower: Vector, { geometry }: CornerModel): number | null {
  const at = new TravelSweep(geometry).solve({ travel: 0, rack: 0 });
  if ("foldAt" in at) return null;
  const riseAt = (point: Vector): number =>
    at.screw.v[2] + cross(at.screw.w as unknown as Vector, subtract(point, geometry.wheel.centre))[2];
  const segments = geometry.links.map(({ inner, outer }) => ({ from: inner, to: outer, carried: false }));
  const { strut } = geometry;
  if (strut) segments.push({ from: strut.axisPoint, to: strut.top, carried: true });
  let best = { far: Math.hypot(...subtract(lower, geometry.wheel.centre)), rise: riseAt(lower) };
  for (const { from, to, carried } of segments) {
    const along = subtract(to, from);
    const share = Math.max(0, Math.min(1, dot(along, subtract(lower, from)) / dot(along, along)));
    const far = Math.hypot(...subtract(lower, add(from, scale(along, share))));
    if (far < best.far) best = { far, rise: carried ? riseAt(lower) : share * riseAt(to) };
  }
  return best.rise;
}
