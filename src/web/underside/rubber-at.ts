import type { Axle, Family, Joint, Position } from "../car.ts";

/** The joint at an end of a link; a place on no link is the top of the strut or the bush of the trailing arm. */
const jointIn = (axle: Axle, at: NonNullable<Position["joint"]>): Joint | undefined => {
  const link = axle.links.find(({ name }) => name === at.link);
  if (link !== undefined) return at.end === "inner" ? link.innerJoint : link.outerJoint;
  return axle.strut?.topMount ?? axle.trailingArm?.bushJoint;
};

/** What can be computed as wrong or different at a position. */
export interface PossibleFaults {
  /** Grades for which the family says what share of the rate is left. */
  readonly tornGrades: readonly (1 | 2 | 3)[];
  /** Play is told along a link, so a mount has none. */
  readonly loose: boolean;
  readonly firmer: boolean;
}

const NONE: PossibleFaults = { tornGrades: [], loose: false, firmer: false };

/** The faults the linkage can compute at a position; all absent where it has no joint there. */
export const possibleFaultsAt = (family: Family, position: Position): PossibleFaults => {
  if (position.joint === null) return NONE;
  const { link } = position.joint;
  const axle = family[position.axle];
  const joint = jointIn(axle, position.joint);
  if (joint === undefined) return NONE;
  const shares = joint.tornShare ?? {};
  return {
    tornGrades: ([1, 2, 3] as const).filter((grade) => shares[grade] !== undefined),
    loose: axle.links.some(({ name }) => name === link),
    firmer: joint.radial !== undefined,
  };
};

/** Whether anything can be computed as wrong or different there. */
export const isComputed = ({ tornGrades, loose, firmer }: PossibleFaults): boolean =>
  tornGrades.length > 0 || loose || firmer;
