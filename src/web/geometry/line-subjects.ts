import type { RubberFault, TravelSubject } from "#casework";
import { metresFromMm } from "#quantity";
import type { Family, Position } from "../car.ts";
import { MOST_LINES } from "../travel/line-search.ts";
import { parseMark } from "../underside/marks-in-address.ts";
import { faultOfMark, type PartFault } from "../underside/position-mark.ts";
import { possibleFaultsAt } from "../underside/rubber-at.ts";
import { canStandAt } from "../underside/signs-at.ts";

/** Between what a place is drawn as besides, as it stands in an address. */
export const BETWEEN = "~";

/**
 * What else an address draws a place as: what can stand there, no kind twice and none it is looked at as, no more than there
 * are lines left beside sound, the one thing and the lowered body.
 */
export const alsoOf = (
  family: Family,
  position: Position | null,
  shown: PartFault | null,
  text: string | undefined,
  lowered: boolean,
): readonly RubberFault[] => {
  if (position === null || shown === null || shown.kind === "fluid-gone" || text === undefined) return [];
  const kinds = new Map<string, RubberFault>();
  for (const part of text.split(BETWEEN)) {
    const mark = parseMark(part);
    const fault = faultOfMark(mark);
    if (mark === null || fault === null || fault.kind === shown.kind || kinds.has(fault.kind)) continue;
    if (canStandAt(position, possibleFaultsAt(family, position), mark)) kinds.set(fault.kind, fault);
  }
  return [...kinds.values()].slice(0, MOST_LINES - (lowered ? 3 : 2));
};

/** The lines of a sheet, the sound corner first, then the place as it is looked at. */
export const subjectsOf = (
  position: Position | null,
  shown: PartFault | null,
  also: readonly RubberFault[],
  lowered_mm: number | undefined,
): readonly TravelSubject[] => {
  const faults = position === null || shown === null || shown.kind === "fluid-gone" ? [] : [shown, ...also];
  return [
    { kind: "sound" },
    ...faults.map((fault) => ({ kind: "rubber" as const, position: position?.id ?? "", fault })),
    ...(lowered_mm === undefined ? [] : [{ kind: "lowered" as const, by: metresFromMm(lowered_mm) }]),
  ];
};
