import type { AxleName, FamilyWork, Operation, RemedyTemplate, Side, WorkScope } from "#vehicle";
import {
  type CoveredRemedy,
  curesFinding,
  type DecidedRemedies,
  leaveOutCovered,
  worstOf,
} from "./covered-remedies.ts";
import type { PlaceFinding } from "./place-finding.ts";

/** A remedy on this car: a template at its place, with the findings it cures. */
export interface CarRemedy {
  /** "trailing-bushes@rear" or "ball-joint@front-left". */
  readonly id: string;
  readonly label: string;
  readonly template: RemedyTemplate;
  readonly axle: AxleName | null;
  /** Sides it is done on: both for a pair. */
  readonly sides: readonly Side[];
  readonly findings: readonly PlaceFinding[];
  readonly grade: 0 | 1 | 2 | 3 | 4;
  readonly closeToCall: boolean;
  readonly operations: readonly CarOperation[];
  /** Part ids made distinct by side, so that each is bought. */
  readonly parts: readonly {
    readonly id: string;
    readonly part: string;
    readonly label: string;
    readonly priceCents: number | null;
    readonly count: number;
  }[];
}

/** One operation at its place; access pieces become operations of their own that several share. */
export interface CarOperation {
  /** "press-trailing-bush@rear-left"; access: "access/wheel-off@rear-left". */
  readonly id: string;
  readonly operation: Operation;
  readonly corner: string | null;
  readonly access: readonly CarAccess[];
}

export interface CarAccess {
  readonly id: string;
  readonly label: string;
  readonly hours: number;
}

/** A remedy with the findings it is made for, before it is put together. */
interface Draft {
  readonly id: string;
  readonly template: RemedyTemplate;
  /** null: done once for the whole car. */
  readonly axle: AxleName | null;
  /** Empty: it belongs to no side, and its parts are counted once. */
  readonly sides: readonly Side[];
  readonly findings: readonly PlaceFinding[];
}

/** What the findings of a visit come to. */
export interface DerivedRemedies {
  readonly remedies: readonly CarRemedy[];
  /** Findings no remedy on file cures. */
  readonly uncured: readonly PlaceFinding[];
  /** Remedies that are left out because another one does their work too. */
  readonly covered: readonly CoveredRemedy[];
}

/**
 * What the findings of a visit ask for: one remedy per template and place, worst first; one whose places another covers is
 * left out and named. Findings below "watch" ask for nothing.
 * @param decided what the owner has declined and agreed to, and what was set to a visit by hand
 */
export function deriveRemedies(
  work: FamilyWork,
  findings: readonly PlaceFinding[],
  decided: DecidedRemedies,
): DerivedRemedies {
  const asking = findings.filter((f) => f.grade !== null && f.grade >= 1);
  const made = new Map<string, Draft>();
  const uncured: PlaceFinding[] = [];
  for (const finding of asking) {
    const template = templateFor(work, finding);
    if (!template) {
      uncured.push(finding);
      continue;
    }
    const draft = draftFor(work, template, finding);
    const known = made.get(draft.id);
    made.set(
      draft.id,
      known
        ? {
            ...known,
            sides: [...new Set([...known.sides, ...draft.sides])],
            findings: [...known.findings, finding],
          }
        : draft,
    );
  }
  const { kept, covered } = leaveOutCovered([...made.values()], decided);
  const remedies = kept.map((draft) => assemble(work, draft));
  remedies.sort((a, b) => b.grade - a.grade || a.id.localeCompare(b.id));
  return { remedies, uncured, covered };
}

/** A remedy at the place of a finding: of the whole car where all its work is, of both sides where it is a pair. */
function draftFor(work: FamilyWork, template: RemedyTemplate, finding: PlaceFinding): Draft {
  const scopes = template.operations.map((id) => work.operations.find((o) => o.id === id)?.scope);
  const wholeCar = scopes.length > 0 && scopes.every((scope) => scope === "car");
  const { axle, side } = finding;
  const place = wholeCar ? "car" : template.pair || side === null ? axle : `${axle}-${side}`;
  const sides: readonly Side[] = wholeCar ? [] : template.pair ? ["left", "right"] : side === null ? [] : [side];
  return { id: `${template.id}@${place}`, template, axle: wholeCar ? null : axle, sides, findings: [finding] };
}

/** Id of the remedy a finding asks for; null where none is on file. */
export function remedyIdFor(work: FamilyWork, finding: PlaceFinding): string | null {
  const template = templateFor(work, finding);
  return template === null ? null : draftFor(work, template, finding).id;
}

/** The template that cures a finding's place, the one for its own axle first. */
function templateFor(work: FamilyWork, finding: PlaceFinding): RemedyTemplate | null {
  const place = finding.place.slice(finding.place.indexOf("/") + 1);
  const all = work.remedies.filter((t) => curesFinding(t, finding));
  return (
    all.find((t) => t.axle !== null && t.cures.includes(place)) ??
    all.find((t) => t.cures.includes(place)) ??
    all[0] ??
    null
  );
}

const bothSides: readonly Side[] = ["left", "right"];

function placeOf(scope: WorkScope, axle: AxleName, side: Side): string {
  return scope === "car" ? "car" : scope === "axle" ? axle : `${axle}-${side}`;
}

function assemble(work: FamilyWork, { id, template, axle, sides, findings }: Draft): CarRemedy {
  const operations = new Map<string, CarOperation>();
  for (const side of sides.length === 0 ? bothSides : sides)
    for (const name of template.operations) {
      const operation = work.operations.find((o) => o.id === name);
      if (!operation) continue;
      const at = (scope: WorkScope): string => placeOf(scope, axle ?? "front", side);
      const place = at(operation.scope);
      const access = operation.access.flatMap((a): CarAccess[] => {
        const piece = work.access.find((p) => p.id === a);
        return piece ? [{ id: `access/${piece.id}@${at(piece.scope)}`, label: piece.label, hours: piece.hours }] : [];
      });
      operations.set(`${operation.id}@${place}`, {
        id: `${operation.id}@${place}`,
        operation,
        corner: operation.scope === "corner" ? place : null,
        access,
      });
    }
  const places = sides.length === 0 ? [axle ?? "car"] : sides.map((side) => `${axle}-${side}`);
  const parts = places.flatMap((place) =>
    template.parts.map((p) => {
      const stock = work.parts.find((s) => s.id === p.part);
      return {
        id: `${p.part}@${place}`,
        part: p.part,
        label: stock?.label ?? p.part,
        priceCents: stock?.priceCents ?? null,
        count: p.count,
      };
    }),
  );
  const worst = worstOf(findings);
  return {
    id,
    label: template.label,
    template,
    axle,
    sides: sides.length === 0 ? bothSides : sides,
    findings,
    grade: worst.grade ?? 0,
    closeToCall: worst.closeToCall,
    operations: [...operations.values()],
    parts,
  };
}
