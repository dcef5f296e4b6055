import { findReadingPlace } from "#vehicle";
import type { JobCardDocument } from "./documents.ts";
import type { StoredLook } from "./look.ts";
import { secondsOf } from "./moment.ts";
import type { PlaceFinding } from "./place-finding.ts";

/**
 * Looks that say how the car came. Once work has begun, a look at a place with a finding tells how it was left, so that
 * what was agreed to does not vanish with its cure; what is found elsewhere meanwhile counts. Heights, pressures and
 * alignment read as left are how the car leaves, whatever they were before.
 * @param asLeft ids of the readings that tell how it leaves
 * @param judge what follows from looks, place by place
 */
export function looksAsFound(
  looks: readonly StoredLook[],
  jobCard: JobCardDocument | null,
  asLeft: ReadonlySet<string>,
  judge: (looks: readonly StoredLook[]) => readonly PlaceFinding[],
): readonly StoredLook[] {
  const signed = (jobCard?.steps ?? []).map((s) => secondsOf(s.at));
  const begun = Math.min(...signed);
  const before = looks.filter((l) => !(secondsOf(l.at) > begun));
  if (before.length === looks.length) return looks.filter((l) => !asLeft.has(l.id));
  const found = new Set(judge(before).flatMap((f) => ((f.grade ?? 0) > 0 ? [f.place] : [])));
  return looks.filter((l) =>
    findReadingPlace(l.place) === null ? before.includes(l) || !found.has(l.place) : !asLeft.has(l.id),
  );
}
