import {
  computeSuspects,
  MOST_SIGNS,
  type NextLooks,
  type Observation,
  type PlannedLook,
  rankLooks,
  type SharesOfSymptom,
  type SuspectModel,
  seedModel,
  signOfLook,
} from "#engines/diagnosis";
import type { SymptomEntry } from "../cases/documents.ts";
import type { PlaceFinding } from "../cases/judge-place.ts";
import { type Cause, causes } from "./cause-table.ts";
import { symptoms } from "./symptom-table.ts";

/** A cause with what speaks for and against it on this car. */
export interface CarSuspect {
  readonly cause: string;
  readonly label: string;
  /** Chance that curing it cures the complaint. */
  readonly cures: number;
  /** Chance that it is there at all. */
  readonly there: number;
  /** Chance before any look, of the cars that come with this complaint. */
  readonly before: number;
  /** Places on this car where it would sit. */
  readonly places: readonly string[];
  readonly speaksFor: readonly string[];
  readonly speaksAgainst: readonly string[];
}

export interface CarSuspects {
  readonly suspects: readonly CarSuspect[];
  readonly twoAtOnce: number;
  readonly somethingElse: number;
  readonly next: NextLooks | null;
  /** Complaints beyond what can be worked through at once, by label; they were left out. */
  readonly leftOut: readonly string[];
  /** Said where nothing can be told: no complaint, or looks that contradict each other under the model. */
  readonly note: string | null;
}

/** How far looking by hand and eye can be trusted (invented start values; outcomes teach better ones). */
const SENSITIVITY = 0.85;
const SPECIFICITY = 0.95;
/** A hydraulic bush that has lost its fluid looks whole in half of the cases (invented). */
const SENSITIVITY_HIDDEN = 0.5;
/** Minutes to look at one place (invented). */
const MINUTES_PER_PLACE = 3;
/** A finding of this grade counts as "there". */
const THERE_FROM = 2;

const lookSign = (cause: string): string => `look:${cause}`;

/** Places of a car where a cause can sit. */
export function placesOfCause(cause: Cause, findings: readonly PlaceFinding[]): readonly PlaceFinding[] {
  const match = cause.match === null ? null : new RegExp(cause.match);
  return findings.filter(
    (f) =>
      cause.kinds.includes(f.kind) &&
      (cause.axle === null || cause.axle === f.axle) &&
      (match === null || match.test(f.place)),
  );
}

/**
 * Suspects behind the complaints of a visit, by exact inference: shares of the complaint table as priors, what was seen
 * at each cause's places as looks. All numbers of the tables are invented start values and say so.
 */
export function findSuspects(entries: readonly SymptomEntry[], findings: readonly PlaceFinding[]): CarSuspects {
  const named = entries.flatMap((e) => symptoms.filter((s) => s.id === e.symptom));
  const told = [...new Set(named)];
  const chosen = told.slice(0, MOST_SIGNS);
  const leftOut = told.slice(MOST_SIGNS).map((s) => s.label);
  const nothing: CarSuspects = {
    suspects: [],
    twoAtOnce: 0,
    somethingElse: 0,
    next: null,
    leftOut,
    note: "No complaint is chosen, so nothing is suspected.",
  };
  if (chosen.length === 0) return nothing;
  const stated: SharesOfSymptom[] = chosen.map((s) => ({
    symptom: s.id,
    shares: new Map(s.causes.map(([cause, share]) => [cause, share / 100])),
  }));
  const seeded = seedModel(stated);
  const known = causes.filter((c) => seeded.causes.some((s) => s.id === c.id));
  const model: SuspectModel = {
    causes: seeded.causes,
    signs: [
      ...seeded.signs,
      ...known.map((c) =>
        signOfLook(
          lookSign(c.id),
          SPECIFICITY,
          new Map([[c.id, c.kinds.includes("hydraulic-bush") ? SENSITIVITY_HIDDEN : SENSITIVITY]]),
        ),
      ),
    ],
  };
  const state = new Map(known.map((c) => [c.id, lookState(placesOfCause(c, findings))]));
  const complaint = chosen.map((s) => s.id);
  const observation: Observation = {
    complaint,
    present: known.flatMap((c) => (state.get(c.id) === "there" ? [lookSign(c.id)] : [])),
    absent: known.flatMap((c) => (state.get(c.id) === "not there" ? [lookSign(c.id)] : [])),
  };
  const answer = computeSuspects(model, observation);
  const before = computeSuspects(model, { complaint, present: [], absent: [] });
  if (answer.kind === "impossible" || before.kind === "impossible")
    return { ...nothing, note: "What was seen cannot all be true under the table of causes: look again." };
  const open: PlannedLook[] = known.flatMap((c) => {
    const places = placesOfCause(c, findings);
    return state.get(c.id) === "open" && places.length > 0
      ? [{ id: c.id, minutes: MINUTES_PER_PLACE * places.length, safety: false, signs: [lookSign(c.id)] }]
      : [];
  });
  return {
    suspects: answer.suspects.map((s): CarSuspect => {
      const cause = known.find((c) => c.id === s.cause);
      const places = cause ? placesOfCause(cause, findings) : [];
      return {
        cause: s.cause,
        label: cause?.label ?? s.cause,
        cures: s.cures,
        there: s.there,
        before: before.suspects.find((b) => b.cause === s.cause)?.cures ?? 0,
        places: places.map((p) => p.place),
        speaksFor: places.flatMap((p) => ((p.grade ?? 0) >= THERE_FROM ? [`${p.label}: ${p.found}`] : [])),
        speaksAgainst: places.flatMap((p) =>
          p.grade !== null && p.grade < THERE_FROM ? [`${p.label}: ${p.found}`] : [],
        ),
      };
    }),
    twoAtOnce: answer.twoAtOnce,
    somethingElse: answer.somethingElse,
    next: open.length > 0 ? rankLooks(model, observation, open) : null,
    leftOut,
    note: null,
  };
}

/** What looking has shown: there at one place is enough; not there only when every place was seen. */
function lookState(places: readonly PlaceFinding[]): "there" | "not there" | "open" {
  if (places.some((p) => (p.grade ?? 0) >= THERE_FROM)) return "there";
  return places.length > 0 && places.every((p) => p.grade !== null) ? "not there" : "open";
}
