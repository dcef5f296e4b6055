import { type Family, type FamilyWork, type Position, positionsOf, workOf } from "#vehicle";
import { withVariation } from "./disc-variation.ts";
import type { SymptomEntry, VisitDocument } from "./documents.ts";
import { gradeFeltFluidLoss } from "./felt-fluid-loss.ts";
import { judgePlace } from "./judge-place.ts";
import type { StoredLook } from "./look.ts";
import type { PlaceFinding } from "./place-finding.ts";
import { groupByPlace } from "./place-looks.ts";
import { withStampedMinimum } from "./stamped-minimum.ts";
import { twinPlace } from "./twin-place.ts";

/** Decisions are guarded at this confidence unless set otherwise. */
export const CONFIDENCE = 0.95;

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
    return judgePlace(withVariation(position, here), {
      position,
      limits: work.limits,
      twin: twin ? (here.get(twin) ?? null) : null,
      past: before.get(position.id) ?? null,
      confidence: CONFIDENCE,
    });
  });
}

/**
 * What follows from looks at each position of a family, by its own limits or the usual ones.
 * @param visit what was read off this very car, which counts before both
 * @param complaints what the owner came with: a leak that is felt is graded higher
 */
export const judgeLooks = (
  family: Family,
  looks: readonly StoredLook[],
  past: readonly StoredLook[],
  visit: Pick<VisitDocument, "discMinimum"> = {},
  complaints: readonly SymptomEntry[] = [],
): readonly PlaceFinding[] =>
  gradeFeltFluidLoss(
    judgePositions(positionsOf(family), looks, past, withStampedMinimum(workOf(family), visit)),
    complaints,
  );
