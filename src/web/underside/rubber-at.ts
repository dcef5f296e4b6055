import type { Axle, Family, Joint, Position } from "../car.ts";

/**
 * The joint at an end of a link; a place on no link is the top of the strut or the bush of the trailing arm. Of several bodies
 * it is the end of a link, or a joint of its own.
 */
const jointIn = (axle: Axle, at: NonNullable<Position["joint"]>): Joint | undefined => {
  const end = at.end === "inner" ? "from" : "to";
  if (axle.bodies !== undefined)
    return axle.bodies.places.find((place) => place.part === at.link && (place.end ?? end) === end)?.joint;
  const link = axle.links.find(({ name }) => name === at.link);
  if (link !== undefined) return at.end === "inner" ? link.innerJoint : link.outerJoint;
  return axle.strut?.topMount ?? axle.trailingArm?.bushJoint;
};

/** What can be computed as wrong or different at a position. */
export interface PossibleFaults {
  /** By grade, what share of the rate the family says is left. */
  readonly tornShare: NonNullable<Joint["tornShare"]>;
  /** Grades for which the family says it. */
  readonly tornGrades: readonly (1 | 2 | 3)[];
  /** Play is told along a link, so a mount has none. */
  readonly loose: boolean;
  readonly firmer: boolean;
  /** What the family says of the rubber there; null where none is, so that there is no hardness to tell. */
  readonly rubber: { readonly hardness: number | null; readonly rateOrigin: Joint["rateOrigin"] } | null;
  /** Only of a hydraulic bush at the inner end of a link, whether or not its fluid is on file. */
  readonly fluidGone: boolean;
}

const NONE: PossibleFaults = {
  tornShare: {},
  tornGrades: [],
  loose: false,
  firmer: false,
  rubber: null,
  fluidGone: false,
};

/** The faults the linkage can compute at a position; all absent where it has no joint there. */
export const possibleFaultsAt = (family: Family, position: Position): PossibleFaults => {
  if (position.joint === null) return NONE;
  const { link, end } = position.joint;
  const axle = family[position.axle];
  const joint = jointIn(axle, position.joint);
  if (joint === undefined) return NONE;
  const tornShare = joint.tornShare ?? {};
  const onLink = axle.links.some(({ name }) => name === link);
  return {
    tornShare,
    tornGrades: ([1, 2, 3] as const).filter((grade) => tornShare[grade] !== undefined),
    loose: onLink || axle.bodies !== undefined,
    firmer: joint.radial !== undefined,
    rubber:
      joint.radial === undefined || joint.kind === "ball-joint"
        ? null
        : { hardness: joint.hardness ?? null, rateOrigin: joint.rateOrigin },
    fluidGone: joint.kind === "hydraulic-bush" && onLink && axle.bodies === undefined && end === "inner",
  };
};

/** Whether anything can be computed as wrong or different there. */
export const isComputed = ({ tornGrades, loose, firmer }: PossibleFaults): boolean =>
  tornGrades.length > 0 || loose || firmer;

/** What is offered there in words: "torn, loose or firmer"; "" where nothing is. */
export const possibleWords = ({ tornGrades, loose, firmer, fluidGone }: PossibleFaults): string => {
  const words = [
    tornGrades.length > 0 ? "torn" : "",
    fluidGone ? "fluid gone" : "",
    loose ? "loose" : "",
    firmer ? "firmer" : "",
  ].filter((word) => word !== "");
  return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} or ${words.at(-1)}`;
};
