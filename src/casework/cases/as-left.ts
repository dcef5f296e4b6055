import { findReadingPlace, type QuantityName } from "#vehicle";
import type { JobCardDocument, PlanDocument } from "./documents.ts";
import type { StoredLook } from "./look.ts";
import { secondsOf } from "./moment.ts";
import { countingLooks } from "./place-looks.ts";
import { groupWords, type ReadingGroup, standardReadings } from "./standard-readings.ts";

/** One quantity at one place as the car came and as it leaves, SI; null: not taken. */
export interface AsLeft {
  readonly place: string;
  readonly label: string;
  readonly group: ReadingGroup;
  readonly groupLabel: string;
  readonly quantity: QuantityName;
  readonly asFound: number | null;
  readonly asLeft: number | null;
}

/** What is set by the work and read again after it. */
const AGAIN: readonly ReadingGroup[] = ["heights", "alignment"];

/** When the last work on the car was signed, seconds; null where nothing was. Checks after the work do not count. */
export function lastWorkAt(jobCard: JobCardDocument | null): number | null {
  const moments = (jobCard?.steps ?? []).filter((s) => !s.step.startsWith("after/")).map((s) => secondsOf(s.at));
  return moments.length === 0 ? null : Math.max(...moments);
}

/** A reading taken after the last signed work, or before it. */
export const isAfterWork = (look: StoredLook, lastWork: number | null): boolean =>
  lastWork !== null && secondsOf(look.at) > lastWork;

/** True for a moment with a time of day; a bare date cannot be put in order with readings of that day. */
const hasTime = (at: string): boolean => at.includes("T");

/** When the owner agreed or the first step was signed, and when work on the car itself was, seconds; Infinity: not yet. */
function workTimes(jobCard: JobCardDocument | null, plan: PlanDocument | null) {
  const signed = jobCard?.steps ?? [];
  const agreed = (plan?.agreed ?? []).filter((a) => hasTime(a.at));
  return {
    begun: Math.min(...[...signed, ...agreed].map((s) => secondsOf(s.at))),
    worked: Math.min(...signed.filter((s) => !/^(before|after)\//.test(s.step)).map((s) => secondsOf(s.at))),
  };
}

/** What a reading of a wheel or axle tells that is taken from now on: how the car leaves, or how it came. */
export function tellsHowItLeaves(jobCard: JobCardDocument | null, plan: PlanDocument | null, isRead: boolean): boolean {
  const { begun, worked } = workTimes(jobCard, plan);
  return worked < Number.POSITIVE_INFINITY || (begun < Number.POSITIVE_INFINITY && isRead);
}

/**
 * Ids of the readings that tell how the car leaves: taken after the owner agreed or the first step was signed, whatever
 * their value. The first reading of anything still tells how the car came while no work is signed.
 */
export function findAsLeft(
  looks: readonly StoredLook[],
  jobCard: JobCardDocument | null,
  plan: PlanDocument | null,
): ReadonlySet<string> {
  const { begun, worked } = workTimes(jobCard, plan);
  const left = new Set<string>();
  const known = new Set<string>();
  for (const look of countingLooks(looks).toSorted((a, b) => a.sequence - b.sequence)) {
    const { content, place } = look;
    if (content.kind !== "reading" || findReadingPlace(place) === null) continue;
    const key = `${place}/${content.quantity}/${content.point ?? ""}`;
    const at = secondsOf(look.at);
    if (at > begun && (at > worked || known.has(key))) left.add(look.id);
    known.add(key);
  }
  return left;
}

/** Heights and alignment as found beside as left; places where neither was read are left out. */
export function deriveAsLeft(looks: readonly StoredLook[], asLeft: ReadonlySet<string>): readonly AsLeft[] {
  const counting = countingLooks(looks).toSorted((a, b) => a.sequence - b.sequence);
  const last = (place: string, quantity: QuantityName, after: boolean): number | null => {
    const found = counting.findLast(
      (l) =>
        l.place === place &&
        l.content.kind === "reading" &&
        l.content.quantity === quantity &&
        asLeft.has(l.id) === after,
    );
    return found?.content.kind === "reading" ? found.content.value : null;
  };
  return standardReadings()
    .filter((r) => AGAIN.includes(r.group))
    .map(({ place, label, group, quantity }) => ({
      place,
      label,
      group,
      groupLabel: groupWords[group],
      quantity,
      asFound: last(place, quantity, false),
      asLeft: last(place, quantity, true),
    }))
    .filter((r) => r.asFound !== null || r.asLeft !== null);
}
