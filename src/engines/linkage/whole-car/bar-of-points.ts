import { add, cross, dot, norm, scale, subtract, type Vector } from "#numeric";
import type { Metres } from "#quantity";
import type { CornerGeometry } from "../geometry.ts";
import { TravelSweep } from "../solve-travel.ts";
import type { AntiRollBar } from "./car-pose.ts";

/** Moduli of spring steel, Pa (textbook, from memory). */
export const STEEL_SHEAR = 79e9;
const STEEL_YOUNG = 206e9;

/**
 * Turn of a bar's levers against each other per lean of the body, radians by radians. Bars in use have 4 to 8 (common
 * practice, no source); beyond this the place of a lever on file is doubted.
 */
export const MOST_TWIST_PER_LEAN = 10;

/** A solid round bar by its points, left half, at ride height, metres. */
export interface BarPoints {
  readonly diameter: Metres;
  /** From the middle of the car to the left end. */
  readonly path: readonly Vector[];
  readonly bodyBush: Vector;
  readonly linkUpper: Vector;
  readonly linkLower: Vector;
}

/** From the axis of a bar's straight middle to its end; 0 where it has no lever. */
export function computeBarLever({ path }: BarPoints): Metres {
  const [first, end] = [path[0], path.at(-1)];
  return first && end ? Math.hypot(end[0] - first[0], end[2] - first[2]) : 0;
}

/**
 * The bar as its levers feel it: a torsion that gives at its ends what twist of its length and bending of its arms and of
 * its middle give together, held at pins on the body. Rubber of its bushes and drop links is left out, so less in truth.
 * Null where it has no lever or no bush beside the middle, or where the linkage does not stand.
 */
export function modelBar(bar: BarPoints, geometry: CornerGeometry): AntiRollBar | null {
  const ratio = computeDropLinkRatio(bar, geometry);
  const lever = computeBarLever(bar);
  const given = computeEndCompliance(bar);
  return ratio === null || !(lever > 0) || given === null ? null : { torsion: lever ** 2 / (2 * given), lever, ratio };
}

/**
 * How far an end of a bar goes per newton at it, the other end pushed the other way, metres per newton: the work of bending
 * and of torsion along a thin rod, exact for straight pieces. Null where its bush does not lie beside the middle.
 */
export function computeEndCompliance(bar: BarPoints): number | null {
  const end = bar.path.at(-1);
  const place = placeOfBush(bar);
  if (!end || place === null) return null;
  const { path, held } = place;
  // No moment of the forces about the length of the car: what the bushes bear.
  const borne = -end[1] / held[1];
  const bending = (STEEL_YOUNG * Math.PI * bar.diameter ** 4) / 64;
  const torsion = (STEEL_SHEAR * Math.PI * bar.diameter ** 4) / 32;
  let sum = 0;
  for (let i = 1; i < path.length; i++) {
    const [from, to] = [path[i - 1] as Vector, path[i] as Vector];
    const along = subtract(to, from);
    const length = norm(along);
    if (length === 0) continue;
    const inboard = i <= place.inboardPieces;
    const work = (share: number): number => {
      const at = add(from, scale(along, share));
      const byEnd = cross(subtract(end, at), [0, 0, 1]);
      const moment = inboard ? add(byEnd, cross(subtract(held, at), [0, 0, borne])) : byEnd;
      const twisting = dot(moment, along) / length;
      return (dot(moment, moment) - twisting ** 2) / bending + twisting ** 2 / torsion;
    };
    // Moments run straight along a piece, so Simpson's rule is exact.
    sum += (length / 6) * (work(0) + 4 * work(0.5) + work(1));
  }
  return sum;
}

/** The path with the place of the bush made a point of it, and how many pieces lie inboard of it. */
function placeOfBush({ path, bodyBush }: BarPoints) {
  for (let i = 1; i < path.length; i++) {
    const [from, to] = [path[i - 1] as Vector, path[i] as Vector];
    const share = (bodyBush[1] - from[1]) / (to[1] - from[1]);
    if (!(share >= 0 && share <= 1) || !(bodyBush[1] > 0)) continue;
    const held = add(from, scale(subtract(to, from), share));
    return { path: [...path.slice(0, i), held, ...path.slice(i)], held, inboardPieces: i };
  }
  return null;
}

/** How far the levers of a bar turn against each other per lean of the body, at ride height; null where that is not known. */
export function computeTwistPerLean(bar: BarPoints, geometry: CornerGeometry): number | null {
  const ratio = computeDropLinkRatio(bar, geometry);
  return ratio === null ? null : (2 * ratio * geometry.wheel.centre[1]) / computeBarLever(bar);
}

/**
 * Rise of the moving end of a drop link per rise of the wheel centre at ride height: it goes with the link or strut it lies
 * on. Null where the linkage does not stand.
 */
export function computeDropLinkRatio(bar: BarPoints, geometry: CornerGeometry): number | null {
  const end = bar.path.at(-1);
  const at = new TravelSweep(geometry).solve({ travel: 0, rack: 0 });
  if (!end || "foldAt" in at) return null;
  // A drop link may stand up to a strut or down to a link: it moves with the part away from the bar.
  const away = (point: Vector): number => norm(subtract(point, end));
  const moving = away(bar.linkUpper) > away(bar.linkLower) ? bar.linkUpper : bar.linkLower;
  const { screw } = at;
  const riseAt = (point: Vector): number =>
    screw.v[2] + cross([screw.w[0], screw.w[1], screw.w[2]], subtract(point, geometry.wheel.centre))[2];
  const segments = geometry.links.map(({ inner, outer }) => ({ from: inner, to: outer, carried: false }));
  const { strut } = geometry;
  if (strut) segments.push({ from: strut.axisPoint, to: strut.top, carried: true });
  let best = { far: norm(subtract(moving, geometry.wheel.centre)), rise: riseAt(moving) };
  for (const { from, to, carried } of segments) {
    const along = subtract(to, from);
    const share = Math.max(0, Math.min(1, dot(along, subtract(moving, from)) / dot(along, along)));
    const far = norm(subtract(moving, add(from, scale(along, share))));
    if (far < best.far) best = { far, rise: carried ? riseAt(moving) : share * riseAt(to) };
  }
  return best.rise;
}
