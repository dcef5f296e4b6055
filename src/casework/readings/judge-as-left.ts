import type { Decision } from "#engines/metrology";
import type { Family, FamilyWork } from "#vehicle";
import { type AsLeft, deriveAsLeft } from "../cases/as-left.ts";
import type { StoredLook } from "../cases/look.ts";
import type { PlaceFinding, Reason, ReasonSubject } from "../cases/place-finding.ts";
import { judgeReadings } from "./judge-readings.ts";

/** A reading as found beside as left, each with what came of it. */
export interface JudgedAsLeft extends AsLeft {
  /** What it was held against and whose; null: nothing on file, or not judged. */
  readonly limitWords: string | null;
  readonly foundDecision: Decision | null;
  readonly leftDecision: Decision | null;
}

/** What an axle says as found and as left: total toe, and where the rear axle points. */
export interface AxleAsLeft {
  readonly place: string;
  readonly label: string;
  readonly asFound: string | null;
  readonly asLeft: string | null;
}

/** How a car leaves: readings beside each other, both wheels of an axle together, and what is beyond its limit still. */
export interface CarAsLeft {
  readonly readings: readonly JudgedAsLeft[];
  readonly axles: readonly AxleAsLeft[];
  /** Readings after the work that lie beyond a limit of somebody's, in words. */
  readonly beyond: readonly string[];
}

interface VisitAsLeft {
  readonly looks: readonly StoredLook[];
  /** Ids of the readings that tell how the car leaves. */
  readonly left: ReadonlySet<string>;
  readonly family: Family | null;
  readonly work: FamilyWork;
  readonly settled: boolean | null;
  readonly confidence: number;
}

/** Heights and alignment as the car leaves, judged as they were when it came. */
export function judgeAsLeft(visit: VisitAsLeft): CarAsLeft {
  const rows = deriveAsLeft(visit.looks, visit.left);
  const judge = (after: boolean): readonly PlaceFinding[] =>
    visit.family === null
      ? []
      : judgeReadings({
          ...visit,
          family: visit.family,
          past: [],
          looks: visit.looks.filter((l) => l.content.kind === "withdrawn" || visit.left.has(l.id) === after),
        });
  const [found, left] = [judge(false), judge(true)];
  const readings = rows.map((row): JudgedAsLeft => {
    const before = limitReasonAt(found, row.place, row.quantity);
    const now = limitReasonAt(left, row.place, row.quantity);
    return {
      ...row,
      limitWords: now?.limit ?? before?.limit ?? null,
      foundDecision: before?.judgement?.decision ?? null,
      leftDecision: now?.judgement?.decision ?? null,
    };
  });
  const ofAxles = (findings: readonly PlaceFinding[]) => findings.filter((f) => f.side === null);
  const places = [...new Set([...ofAxles(found), ...ofAxles(left)].map((f) => f.place))];
  const wordsAt = (findings: readonly PlaceFinding[], place: string): string | null =>
    findings.find((f) => f.place === place)?.found ?? null;
  return {
    readings,
    axles: places.map((place) => ({
      place,
      label: place.startsWith("front") ? "Front axle" : "Rear axle",
      asFound: wordsAt(found, place),
      asLeft: wordsAt(left, place),
    })),
    beyond: left
      .filter((f) => f.kind !== "tyre-pressure")
      .flatMap((f) => f.reasons.filter(isBeyondLimit).map((r) => `${nameOf(f)}: ${r.text}`)),
  };
}

/** The reason that holds a quantity at a place against a limit. */
const limitReasonAt = (findings: readonly PlaceFinding[], place: string, about: ReasonSubject): Reason | undefined =>
  findings.find((f) => f.place === place)?.reasons.find((r) => r.about === about && r.limit !== null);

const isBeyondLimit = ({ judgement }: Reason): boolean =>
  judgement?.against === "limit" && judgement.decision === "beyond";

const nameOf = ({ axle, side }: PlaceFinding): string => (side === null ? `${axle} axle` : `${axle} ${side}`);
