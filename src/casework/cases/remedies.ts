import type { AxleName, FamilyWork, Operation, RemedyTemplate, Side, WorkScope } from "#vehicle";
import type { PlaceFinding } from "./judge-place.ts";

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

/** What the findings of a visit ask for: one remedy per template and place, worst first. Findings below "watch" ask for nothing. */
export function deriveRemedies(
  work: FamilyWork,
  findings: readonly PlaceFinding[],
): { remedies: CarRemedy[]; uncured: PlaceFinding[] } {
  const asking = findings.filter((f) => f.grade !== null && f.grade >= 1);
  const made = new Map<
    string,
    { template: RemedyTemplate; axle: AxleName; sides: Set<Side>; findings: PlaceFinding[] }
  >();
  const uncured: PlaceFinding[] = [];
  for (const finding of asking) {
    const template = templateFor(work, finding);
    if (!template) {
      uncured.push(finding);
      continue;
    }
    const side = finding.side;
    const place = template.pair || side === null ? finding.axle : `${finding.axle}-${side}`;
    const id = `${template.id}@${place}`;
    const known = made.get(id) ?? { template, axle: finding.axle, sides: new Set<Side>(), findings: [] };
    for (const s of template.pair || side === null ? (["left", "right"] as const) : [side]) known.sides.add(s);
    known.findings.push(finding);
    made.set(id, known);
  }
  const remedies = [...made].map(([id, m]) => assemble(work, id, m.template, m.axle, [...m.sides], m.findings));
  remedies.sort((a, b) => b.grade - a.grade || a.id.localeCompare(b.id));
  return { remedies, uncured };
}

/** The template that cures a finding's place, the one for its own axle first. */
function templateFor(work: FamilyWork, finding: PlaceFinding): RemedyTemplate | null {
  const place = finding.place.slice(finding.place.indexOf("/") + 1);
  const fits = (t: RemedyTemplate): boolean =>
    (t.axle === null || t.axle === finding.axle) && t.cures.some((c) => c === place || c === finding.kind);
  const all = work.remedies.filter(fits);
  return (
    all.find((t) => t.axle !== null && t.cures.includes(place)) ??
    all.find((t) => t.cures.includes(place)) ??
    all[0] ??
    null
  );
}

function placeOf(scope: WorkScope, axle: AxleName, side: Side): string {
  return scope === "car" ? "car" : scope === "axle" ? axle : `${axle}-${side}`;
}

function assemble(
  work: FamilyWork,
  id: string,
  template: RemedyTemplate,
  axle: AxleName,
  sides: readonly Side[],
  findings: readonly PlaceFinding[],
): CarRemedy {
  const operations = new Map<string, CarOperation>();
  for (const side of sides)
    for (const name of template.operations) {
      const operation = work.operations.find((o) => o.id === name);
      if (!operation) continue;
      const place = placeOf(operation.scope, axle, side);
      const access = operation.access.flatMap((a): CarAccess[] => {
        const piece = work.access.find((p) => p.id === a);
        return piece
          ? [{ id: `access/${piece.id}@${placeOf(piece.scope, axle, side)}`, label: piece.label, hours: piece.hours }]
          : [];
      });
      operations.set(`${operation.id}@${place}`, {
        id: `${operation.id}@${place}`,
        operation,
        corner: operation.scope === "corner" ? place : null,
        access,
      });
    }
  const parts = sides.flatMap((side) =>
    template.parts.map((p) => {
      const stock = work.parts.find((s) => s.id === p.part);
      return {
        id: `${p.part}@${axle}-${side}`,
        part: p.part,
        label: stock?.label ?? p.part,
        priceCents: stock?.priceCents ?? null,
        count: p.count,
      };
    }),
  );
  const worst = findings.reduce((a, b) => ((b.grade ?? 0) > (a.grade ?? 0) ? b : a));
  return {
    id,
    label: template.label,
    template,
    axle,
    sides,
    findings,
    grade: worst.grade ?? 0,
    closeToCall: worst.closeToCall,
    operations: [...operations.values()],
    parts,
  };
}
