import type { PlaceFinding, Reason } from "../cases/place-finding.ts";
import type { Cause } from "./cause-table.ts";
import type { LookState } from "./suspect-question.ts";

/** A finding of this grade counts as "there". */
export const THERE_FROM = 2;

/** Places of a car's layout where a cause would sit, whatever was found there. */
export function placesOnLayout(cause: Cause, findings: readonly PlaceFinding[]): readonly PlaceFinding[] {
  const match = cause.match === null ? null : new RegExp(cause.match);
  return findings.filter(
    (f) =>
      cause.kinds.includes(f.kind) &&
      (cause.axle === null || cause.axle === f.axle) &&
      (match === null || match.test(f.place)),
  );
}

/** Places of a car where a cause can sit; where it is a reading, those that speak of it. */
export const placesOfCause = (cause: Cause, findings: readonly PlaceFinding[]): readonly PlaceFinding[] =>
  placesOnLayout(cause, findings).filter(
    ({ reasons }) => cause.about === undefined || reasons.some((r) => isAbout(cause, r)),
  );

const isAbout = ({ about }: Cause, reason: Reason): boolean =>
  about === undefined || (reason.about !== null && about.includes(reason.about));

/** There at one place is enough; not there only when every place was looked at, or read and held against a limit. */
export function lookState(cause: Cause, places: readonly PlaceFinding[]): LookState {
  if (places.some((p) => isThere(cause, p))) return "there";
  return places.length > 0 && places.every((p) => isRuledOut(cause, p)) ? "not there" : "open";
}

/** True where a place shows the cause. */
export function isThere(cause: Cause, { kind, grade, reasons, looks }: PlaceFinding): boolean {
  if (cause.about !== undefined)
    return reasons.some((r) => isAbout(cause, r) && r.grade >= THERE_FROM && !r.closeToCall);
  const { signs } = cause;
  return (
    (kind === "tyre" ? gradeOfSigns(reasons) : (grade ?? 0)) >= THERE_FROM &&
    (signs === undefined || signs.some((sign) => looks?.signs.includes(sign)))
  );
}

/** Grade by what an eye has seen: how deep and how even a tread is tells nothing of what is wrong inside a tyre. */
const gradeOfSigns = (reasons: readonly Reason[]): number =>
  Math.max(0, ...reasons.flatMap(({ about, grade }) => (about === null ? [grade] : [])));

/** True where an eye has looked, and did not only read a figure. */
const isSeen = ({ looks }: PlaceFinding): boolean =>
  (looks?.looks ?? []).some(({ content }) => content.kind === "signs" || content.kind === "nothing-seen");

/** True where a place speaks against the cause: a reading must lie within a limit, an eye that can tell it must have looked. */
export function isRuledOut(cause: Cause, finding: PlaceFinding): boolean {
  const { grade, reasons } = finding;
  if (grade === null || isThere(cause, finding)) return false;
  if (finding.kind === "tyre" && cause.about === undefined && !isSeen(finding)) return false;
  if (cause.about === undefined) return cause.signs === undefined ? grade < THERE_FROM : cause.signs.length > 0;
  const about = reasons.filter((r) => isAbout(cause, r));
  return (
    about.some((r) => r.judgement?.against === "limit" && r.judgement.decision === "within") &&
    about.every((r) => r.grade === 0 && !r.closeToCall)
  );
}
