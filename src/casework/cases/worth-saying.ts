import type { PlaceFinding, Reason } from "./place-finding.ts";

/** Said in place of a grade where something was read in a state that says nothing. */
export const NOT_KNOWN = "Not known";

/** True where there is something to say of a place: a grade above sound, too close to call, or read and yet not known. */
export const isWorthSaying = (finding: Pick<PlaceFinding, "grade" | "closeToCall" | "notKnown" | "caveat">): boolean =>
  (finding.grade ?? 0) > 0 || finding.closeToCall || saysNothing(finding);

/** Read in a state that says nothing; what only lacks a limit is named by notOnFileWords. */
export const saysNothing = ({ notKnown, caveat }: Pick<PlaceFinding, "notKnown" | "caveat">): boolean =>
  notKnown && caveat !== null;

/** Whether a reason has a grade of its own: a reading held against nothing says neither sound nor worn. */
export const hasGrade = ({ judgement }: Pick<Reason, "judgement">): boolean =>
  judgement === null || judgement.decision !== null;

/** Quantities that were read and held against no limit because none is on file, with how many places; "" where there are none. */
export function notOnFileWords(findings: readonly PlaceFinding[]): string {
  const places = new Map<string, Set<string>>();
  for (const finding of findings)
    for (const { about, judgement } of finding.reasons) {
      if (saysNothing(finding) || about === null || judgement === null || !("why" in judgement)) continue;
      places.set(about, (places.get(about) ?? new Set()).add(finding.place));
    }
  const parts = [...places].map(
    ([about, at]) => `${about.replaceAll("-", " ")} (${at.size} ${at.size === 1 ? "place" : "places"})`,
  );
  return parts.length === 0 ? "" : `Read, with no limit on file: ${parts.join(", ")}.`;
}
