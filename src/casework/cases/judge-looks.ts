import { type Family, type FamilyWork, type Position, positionsOf, workOf } from "#vehicle";
import { judgePlace, type PlaceFinding } from "./judge-place.ts";
import type { StoredLook } from "./look.ts";
import { groupByPlace } from "./place-looks.ts";

/** Decisions are guarded at this confidence unless set otherwise. */
export const CONFIDENCE = 0.95;

/** The same place on the other side; null where a place belongs to an axle as a whole. */
export function twinPlace(place: string): string | null {
  if (/^(front|rear)-left\//.test(place)) return place.replace("-left/", "-right/");
  if (/^(front|rear)-right\//.test(place)) return place.replace("-right/", "-left/");
  return null;
}

/**
 * What follows from looks at each position, in the order of the positions.
 * @param past looks of earlier visits; the last of each place counts
 */
export function judgePositions(
  positions: readonly Position[],
  looks: readonly StoredLook[],
  past: readonly StoredLook[],
  work: FamilyWork,
): readonly PlaceFinding[] {
  const here = groupByPlace(looks);
  const before = groupByPlace(past);
  return positions.map((position) => {
    const twin = twinPlace(position.id);
    return judgePlace(here.get(position.id) ?? null, {
      position,
      limits: work.limits,
      twin: twin ? (here.get(twin) ?? null) : null,
      past: before.get(position.id) ?? null,
      confidence: CONFIDENCE,
    });
  });
}

/** What follows from looks at each position of a family, by its own limits or the usual ones. */
export const judgeLooks = (
  family: Family,
  looks: readonly StoredLook[],
  past: readonly StoredLook[],
): readonly PlaceFinding[] => judgePositions(positionsOf(family), looks, past, workOf(family));
