import { gradeOfSign, SIGNS_OF_TORN, type SignName, signsFor } from "#casework";
import type { Position } from "../car.ts";
import type { PositionMark } from "./position-mark.ts";
import type { PossibleFaults } from "./rubber-at.ts";

/** Dangerous by themselves whatever is left of the rate: offered as signs beside the grades of a torn rubber. */
const BEYOND_GRADES: readonly SignName[] = ["separated", "metal-contact"];

/**
 * Signs offered at a position beside what the linkage computes there; "cannot be reached" last. A torn rubber's signs are
 * marked as its grades where these are offered, and lost fluid as such, since they are then computed with.
 */
export const signsAt = ({ kind }: Position, { tornGrades, loose, fluidGone }: PossibleFaults): readonly SignName[] =>
  signsFor(kind).filter(
    (sign) =>
      !(tornGrades.length > 0 && SIGNS_OF_TORN.includes(sign) && !BEYOND_GRADES.includes(sign)) &&
      !(loose && sign === "play-felt") &&
      !(fluidGone && sign === "fluid-gone"),
  );

/** Whether a mark can stand at a position: a fault the linkage computes there, or signs that mean something there. */
export const canStandAt = (position: Position, possible: PossibleFaults, mark: PositionMark): boolean => {
  switch (mark.kind) {
    case "sound":
      return true;
    case "torn":
      return possible.tornGrades.includes(mark.grade);
    case "loose":
      return possible.loose;
    case "firmer":
      return possible.firmer && (possible.rubber !== null || !("hardness" in mark));
    case "fluid-gone":
      return possible.fluidGone;
    case "seen":
      return mark.signs.every((sign) => sign === "cannot-reach" || gradeOfSign(position.kind, sign) !== null);
  }
};
