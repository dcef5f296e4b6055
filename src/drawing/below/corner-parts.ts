import type { Axle, Position, Side } from "#vehicle";
import type { CornerPart } from "./corner-part.ts";
import { knuckleParts, linkParts, trailingArmParts } from "./link-parts.ts";
import { barParts, driveParts, smallParts, springParts, wheelPart } from "./wheel-and-spring-parts.ts";

/**
 * All drawn parts of one corner, what lies highest (farthest from the eye) first.
 * @param from parts that reach to the middle of the car begin this far from it, metres
 */
export function cornerParts(axle: Axle, side: Side, positions: readonly Position[], from = 0): readonly CornerPart[] {
  return [
    ...linkParts(axle, side),
    ...trailingArmParts(axle, side),
    ...knuckleParts(axle, side),
    ...springParts(axle, side),
    wheelPart(axle, side),
    ...barParts(axle, side, from),
    ...driveParts(axle, side, from),
    ...smallParts(axle, side, positions),
  ].toSorted((a, b) => b.height - a.height);
}
