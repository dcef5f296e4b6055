import type { PlaceFinding, Reason } from "../cases/place-finding.ts";
import type { Cause } from "./cause.ts";
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

/** True where only a reading tells the cause: no eye can see a toe. */
export const isReadingAlone = ({ about, signs }: Cause): boolean => about !== undefined && signs === undefined;

/** Places of a car where a cause can sit; where it is a reading alone, those that speak of it. */
export const placesOfCause = (cause: Cause, findings: readonly PlaceFinding[]): readonly PlaceFinding[] =>
  placesOnLayout(cause, findings).filter(
    ({ reasons }) => !isReadingAlone(cause) || reasons.some((r) => isAbout(cause, r)),
  );

const isAbout = ({ about = [] }: Cause, reason: Reason): boolean =>
  reason.about !== null && about.includes(reason.about);

/** There at one place is enough; not there only when every place was looked at, or read and held against a limit. */
export function lookState(cause: Cause, places: readonly PlaceFinding[]): LookState {
  if (places.some((p) => isThere(cause, p))) return "there";
  return places.length > 0 && places.every((p) => isRuledOut(cause, p)) ? "not there" : "open";
}

/** True where a place shows the cause: by its signs or by its readings; where it has neither, by anything found there. */
export function isThere(cause: Cause, { kind, grade, reasons, looks }: PlaceFinding): boolean {
  const { about, signs } = cause;
  const isRead = reasons.some((r) => isAbout(cause, r) && r.grade >= THERE_FROM && !r.closeToCall);
  if (about !== undefined && isRead) return true;
  if (about !== undefined && signs === undefined) return false;
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

/** True where every reading that tells the cause lies within a limit; false where there is none. */
const isReadWithin = (cause: Cause, { reasons }: PlaceFinding): boolean => {
  if (cause.about === undefined) return false;
  const about = reasons.filter((r) => isAbout(cause, r));
  return (
    about.some((r) => r.judgement?.against === "limit" && r.judgement.decision === "within") &&
    about.every((r) => r.grade === 0 && !r.closeToCall)
  );
};

/** True where a place speaks against the cause: a reading must lie within a limit, an eye that can tell it must have looked. */
export function isRuledOut(cause: Cause, finding: PlaceFinding): boolean {
  const { grade } = finding;
  if (grade === null || isThere(cause, finding)) return false;
  if (isReadWithin(cause, finding)) return true;
  if (cause.signs !== undefined) return cause.signs.length > 0 && isSeen(finding);
  if (isReadingAlone(cause) || (finding.kind === "tyre" && !isSeen(finding))) return false;
  return grade < THERE_FROM;
}
