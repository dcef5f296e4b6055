import type { RemedyTemplate, Side } from "#vehicle";
import type { PlanDocument } from "./documents.ts";
import type { PlaceFinding } from "./place-finding.ts";

/** What people have said of remedies. */
export type DecidedRemedies = Pick<PlanDocument, "declined" | "agreed" | "fixed">;

/** A remedy that is left out because another one does its work too. */
export interface CoveredRemedy {
  readonly id: string;
  readonly label: string;
  /** Id of the remedy that covers it. */
  readonly by: string;
  readonly why: string;
}

interface Coverable {
  readonly id: string;
  readonly template: RemedyTemplate;
  readonly sides: readonly Side[];
  readonly findings: readonly PlaceFinding[];
}

/** From this grade on a remedy is done within the plan, so that others may lean on it. */
const DONE_FROM = 2;

/** True where a template cures a finding: its place, or its kind, on its axle. */
export function curesFinding(template: RemedyTemplate, finding: PlaceFinding): boolean {
  const place = finding.place.slice(finding.place.indexOf("/") + 1);
  return (
    (template.axle === null || template.axle === finding.axle) &&
    template.cures.some((c) => c === place || c === finding.kind)
  );
}

/** The finding of highest grade; there is always one. */
export function worstOf(findings: readonly PlaceFinding[]): PlaceFinding {
  return findings.reduce((a, b) => ((b.grade ?? 0) > (a.grade ?? 0) ? b : a));
}

/**
 * Leaves out each remedy all of whose places another one cures, on the same sides and no later: at least as urgent and
 * itself to be done. Its findings go to that other. What the owner declined covers nothing and is not covered; what was
 * agreed to or set by hand gives way only to what was, too.
 */
export function leaveOutCovered<R extends Coverable>(
  remedies: readonly R[],
  decided: DecidedRemedies,
): { readonly kept: readonly R[]; readonly covered: readonly CoveredRemedy[] } {
  const kept = [...remedies];
  const covered: CoveredRemedy[] = [];
  for (;;) {
    const pair = findPair(kept, decided);
    if (pair === null) return { kept, covered };
    const { less, more } = pair;
    kept.splice(kept.indexOf(less), 1);
    kept.splice(kept.indexOf(more), 1, { ...more, findings: [...more.findings, ...less.findings] });
    const why = `${more.template.label} does this work too.`;
    covered.push({ id: less.id, label: less.template.label, by: more.id, why });
  }
}

function findPair<R extends Coverable>(
  remedies: readonly R[],
  decided: DecidedRemedies,
): { readonly less: R; readonly more: R } | null {
  for (const less of remedies)
    for (const more of remedies) if (less !== more && covers(more, less, decided)) return { less, more };
  return null;
}

function covers(more: Coverable, less: Coverable, { declined, agreed, fixed }: DecidedRemedies): boolean {
  const isHeld = ({ id }: Coverable): boolean =>
    agreed.some((a) => a.remedy === id) || fixed.some((f) => f.remedy === id);
  const [needed, done] = [worstOf(less.findings).grade ?? 0, worstOf(more.findings).grade ?? 0];
  return (
    !declined.includes(more.id) &&
    !declined.includes(less.id) &&
    (isHeld(more) || (!isHeld(less) && done >= DONE_FROM && done >= needed)) &&
    less.sides.every((side) => more.sides.includes(side)) &&
    (less.sides.length > 0 || more.sides.length !== 1) &&
    less.findings.every((finding) => curesFinding(more.template, finding)) &&
    less.findings.every(({ axle }) => more.findings.some((other) => other.axle === axle))
  );
}
