import { add, cross, dot, scale, subtract, unitVector, type Vector } from "#numeric";
import { carryPoint } from "../corner-linkage.ts";
import type { CornerGeometry, LinkGeometry, SpringGeometry } from "../geometry.ts";
import type { Pose } from "../pose.ts";

/** Name under which the knuckle stands among the parts a force can act on. */
export const KNUCKLE_PART = "knuckle";

/** Links of one rigid part: a single link, or the legs of an arm (links with one outer point). */
export interface MovingPart {
  /** Name of its first link, or "knuckle". */
  readonly name: string;
  readonly legs: readonly LinkGeometry[];
}

/** A force on a moving part at a place of the vehicle, newtons. */
export interface PartForce {
  readonly part: string;
  readonly at: Vector;
  readonly force: Vector;
}

const same = (a: Vector, b: Vector): boolean => a[0] === b[0] && a[1] === b[1] && a[2] === b[2];

/** The rigid parts between body and knuckle, each once, in the order of their first links. */
export function movingParts(geometry: CornerGeometry): readonly MovingPart[] {
  return geometry.links.flatMap((link, i) => {
    const legs = geometry.links.filter((other) => same(other.outer, link.outer));
    return geometry.links.findIndex((other) => same(other.outer, link.outer)) === i ? [{ name: link.name, legs }] : [];
  });
}

/** Where a design point of the knuckle stands at a pose. */
export function placeOf(geometry: CornerGeometry, pose: Pose, point: Vector): Vector {
  const shift: Vector = [pose.t[0] as number, pose.t[1] as number, pose.t[2] as number];
  return carryPoint(geometry.wheel.centre, shift, pose.r, point);
}

/** The part a spring or damper sits on. */
export function partOfSeat(parts: readonly MovingPart[], { seat }: SpringGeometry): string {
  if (seat.on === "knuckle") return KNUCKLE_PART;
  const link = seat.on === "link" ? seat.link : seat.links[0];
  return parts.find((part) => part.legs.some((leg) => leg.name === link))?.name ?? KNUCKLE_PART;
}

/**
 * Where a point of a part stands that lies at a share of the way from its inner joints (their middle) to its outer one at
 * design; a single link carries it along its line, an arm turns it about the line of its inner points.
 */
export function pointOnPart(geometry: CornerGeometry, part: MovingPart, pose: Pose, share: number): Vector {
  const outer = placeOf(geometry, pose, (part.legs[0] as LinkGeometry).outer);
  const middle = scale(
    part.legs.reduce<Vector>((sum, leg) => add(sum, leg.inner), [0, 0, 0]),
    1 / part.legs.length,
  );
  // The middle of the inner joints lies on the hinge, so the point stays on the line to the outer joint in both cases.
  return add(middle, scale(subtract(outer, middle), share));
}

/**
 * What a force on a part passes to the knuckle at its outer joint beside the legs' own pulls: of a link the share of its
 * lever, of an arm the part that turns it about its hinge, at right angles to the arm.
 */
export function passedOn(geometry: CornerGeometry, part: MovingPart, pose: Pose, { at, force }: PartForce): Vector {
  const [first, second] = part.legs as readonly [LinkGeometry, LinkGeometry | undefined];
  const outer = placeOf(geometry, pose, first.outer);
  const reach = subtract(outer, first.inner);
  if (!second) return scale(force, dot(subtract(at, first.inner), reach) / dot(reach, reach));
  const hinge = unitVector(subtract(second.inner, first.inner));
  const across = subtract(reach, scale(hinge, dot(reach, hinge)));
  const moment = dot(cross(subtract(at, first.inner), force), hinge);
  return scale(cross(hinge, across), moment / dot(across, across));
}
