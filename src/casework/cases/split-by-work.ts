import { type Family, findReadingPlace } from "#vehicle";
import { looksAsFound } from "./as-found.ts";
import { findAsLeft, tellsHowItLeaves } from "./as-left.ts";
import type { JobCardDocument, PlanDocument, VisitDocument } from "./documents.ts";
import { judgeLooks } from "./judge-looks.ts";
import type { StoredLook } from "./look.ts";

/** Looks of a visit by whether they tell how the car came or how it leaves. */
export interface SplitLooks {
  readonly found: readonly StoredLook[];
  readonly left: readonly StoredLook[];
  /** True where a reading of this place taken from now on tells how the car leaves; `isRead`: it was read before. */
  readonly leavesAt: (place: string, isRead: boolean) => boolean;
}

interface VisitLooks {
  readonly looks: readonly StoredLook[];
  readonly past: readonly StoredLook[];
  readonly family: Family | null;
  /** What was read off this very car, which counts before what is on file. */
  readonly visit: Pick<VisitDocument, "discMinimum">;
  readonly jobCard: JobCardDocument | null;
  readonly plan: PlanDocument | null;
}

/** Parts the looks of a visit as the appraisal does, so that a page of entries says which of the two it is taking. */
export function splitByWork({ looks, past, family, visit, jobCard, plan }: VisitLooks): SplitLooks {
  const judge = (some: readonly StoredLook[]) => (family === null ? [] : judgeLooks(family, some, past, visit));
  const asLeft = findAsLeft(looks, jobCard, plan);
  const found = looksAsFound(looks, jobCard, asLeft, judge);
  const kept = new Set(found.map(({ id }) => id));
  const isSigned = (jobCard?.steps ?? []).length > 0;
  const worn = new Set(isSigned ? judge(found).flatMap((f) => ((f.grade ?? 0) > 0 ? [f.place] : [])) : []);
  return {
    found,
    left: looks.filter(({ id }) => !kept.has(id)),
    leavesAt: (place, isRead) =>
      findReadingPlace(place) === null ? worn.has(place) : tellsHowItLeaves(jobCard, plan, isRead),
  };
}
