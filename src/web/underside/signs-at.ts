import { gradeOfSign, type SignName, signsFor } from "#casework";
import type { Position } from "../car.ts";
import type { PositionMark } from "./position-mark.ts";
import type { PossibleFaults } from "./rubber-at.ts";

/** Signs a torn rubber shows; where its grades are offered they are marked as such, since the linkage then computes with them. */
const SIGNS_OF_TORN: readonly SignName[] = [
  "surface-cracks",
  "deep-cracks",
  "no-spring-back",
  "web-torn",
  "sleeve-off-centre",
];

/** Signs offered at a position beside what the linkage computes there; "cannot be reached" last. */
export const signsAt = ({ kind }: Position, { tornGrades, loose }: PossibleFaults): readonly SignName[] =>
  signsFor(kind).filter(
    (sign) => !(tornGrades.length > 0 && SIGNS_OF_TORN.includes(sign)) && !(loose && sign === "play-felt"),
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
      return possible.firmer;
    case "fluid-gone":
      return possible.fluidGone;
    case "seen":
      return mark.signs.every((sign) => sign === "cannot-reach" || gradeOfSign(position.kind, sign) !== null);
  }
};
