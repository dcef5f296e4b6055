import { computeSuspects, MOST_SIGNS, type NextLooks, type PlannedLook, rankLooks } from "#engines/diagnosis";
import type { SuspectWord, SymptomEntry } from "../cases/documents.ts";
import { foundAt } from "../cases/found-at.ts";
import type { PlaceFinding } from "../cases/place-finding.ts";
import { computeMoves, type Move } from "./answer-moves.ts";
import type { Cause } from "./cause.ts";
import { elsewhereWords } from "./cause-words.ts";
import { isSeenForCertain } from "./certain-signs.ts";
import { feltAxle, fitToLayout, placesFor } from "./fit-to-car.ts";
import { isRuledOut, isThere, lookState } from "./look-state.ts";
import { buildQuestion, lookSign, type SuspectBasis } from "./suspect-question.ts";
import { lastWords } from "./suspect-words.ts";
import { symptoms } from "./symptom-table.ts";
import { findWearSigns, wearSignWords } from "./wear-signs.ts";

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
  /** Where it is looked for where it has none of them; "" where it has one. */
  readonly elsewhere: string;
  readonly speaksFor: readonly string[];
  readonly speaksAgainst: readonly string[];
  /** What somebody said of it that counts; null: nothing, or it was taken back. */
  readonly word: SuspectWord | null;
  /** What its chance is computed from. */
  readonly basis: SuspectBasis;
  /** What each answer has done to its chance, the strongest first; none where there are too many complaints to tell. */
  readonly moves: readonly Move[];
}

export interface CarSuspects {
  /** The likeliest cure first. */
  readonly suspects: readonly CarSuspect[];
  readonly twoAtOnce: number;
  readonly somethingElse: number;
  readonly next: NextLooks | null;
  /** Complaints beyond what can be worked through at once, by label; they were left out. */
  readonly leftOut: readonly string[];
  /** Said where nothing can be told: no complaint, or looks that contradict each other under the model. */
  readonly note: string | null;
}

/** A look that settles the complaint with less than this chance tells too little to be advised. */
const LEAST_GAIN = 0.01;

/** Looks that are worth advising, the best first; none where no single one tells much. */
export const tellingLooks = ({ next }: Pick<CarSuspects, "next">): NextLooks["looks"] =>
  next === null || next.stop !== null ? [] : next.looks.filter((look) => look.settles >= LEAST_GAIN);

/** Said where looks are left and no single one tells much. */
export const NO_LOOK_TELLS_MUCH =
  "No single look tells much now: none would settle it with a chance of 1 % or more. Accept or rule out what you know.";

/** Signs of worn tyres that are weighed beside the complaints (invented bound). */
const MOST_WEAR = 4;

/** Minutes to look at one place (invented). */
const MINUTES_PER_PLACE = 3;
/**
 * Suspects behind the complaints of a visit, by exact inference: shares of the complaint table as priors, what was seen
 * at each cause's places as looks; a cause somebody accepted is taken as there, one ruled out as not there. All numbers
 * of the tables are invented start values and say so.
 */
export function findSuspects(
  entries: readonly SymptomEntry[],
  findings: readonly PlaceFinding[],
  said: readonly SuspectWord[] = [],
): CarSuspects {
  const named = entries.flatMap((e) => symptoms.filter((s) => s.id === e.symptom));
  const told = [...new Set(named)];
  const chosen = told.slice(0, MOST_SIGNS).map((symptom) => fitToLayout(symptom, findings));
  const felt = feltAxle(entries);
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
  const words = lastWords(said);
  const question = buildQuestion(
    chosen,
    words,
    (cause) => lookState(cause, placesFor(cause, findings, felt)),
    (cause) => isSeenForCertain(cause.id, placesFor(cause, findings, felt)),
    (causesBehind) =>
      findWearSigns(
        chosen.map(({ id }) => id),
        causesBehind,
        findings,
      ).slice(0, Math.min(MOST_WEAR, MOST_SIGNS - chosen.length)),
  );
  const { known, model, observation } = question;
  const answer = computeSuspects(model, observation);
  const before = computeSuspects(question.untouched, { complaint: observation.complaint, present: [], absent: [] });
  if (answer.kind === "impossible" || before.kind === "impossible")
    return { ...nothing, note: "What was seen cannot all be true under the table of causes: look again." };
  const open: PlannedLook[] = known.flatMap((c) => {
    const places = placesFor(c, findings, felt);
    return question.state.get(c.id) === "open" && places.length > 0 && c.signs?.length !== 0 && !words.has(c.id)
      ? [{ id: c.id, minutes: MINUTES_PER_PLACE * places.length, safety: false, signs: [lookSign(c.id)] }]
      : [];
  });
  const moves = computeMoves(question, answer.suspects, (cause, state) =>
    answerWords(cause, placesFor(cause, findings, felt), state),
  );
  return {
    suspects: answer.suspects.map((s): CarSuspect => {
      const cause = known.find((c) => c.id === s.cause);
      const places = cause ? placesFor(cause, findings, felt) : [];
      return {
        cause: s.cause,
        label: cause?.label ?? s.cause,
        cures: s.cures,
        there: s.there,
        before: before.suspects.find((b) => b.cause === s.cause)?.cures ?? 0,
        places: places.map((p) => p.place),
        elsewhere: places.length > 0 || cause === undefined ? "" : elsewhereWords(cause),
        speaksFor: [
          ...places.flatMap((p) => (cause && isThere(cause, p) ? [saidAt(p)] : [])),
          ...question.wear.flatMap((sign) => (sign.strengths.has(s.cause) ? [wearSignWords(sign)] : [])),
        ],
        speaksAgainst: places.flatMap((p) => (cause && isRuledOut(cause, p) ? [saidAt(p)] : [])),
        word: words.get(s.cause) ?? null,
        basis: question.basisOf(s.cause),
        moves: moves.get(s.cause) ?? [],
      };
    }),
    twoAtOnce: answer.twoAtOnce,
    somethingElse: answer.somethingElse,
    next: open.length > 0 ? rankLooks(model, observation, open) : null,
    leftOut,
    note: null,
  };
}

/** What was found at a place, with its side: "Front left, tension link, inner bush: web torn". */
function saidAt(finding: PlaceFinding): string {
  const words = foundAt(finding);
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}

/** What a look has answered, in words: the place that shows it, or that none of its places does. */
function answerWords(cause: Cause, places: readonly PlaceFinding[], state: "there" | "not there"): string {
  const shown = places.find((p) => isThere(cause, p));
  if (state === "there" && shown) return saidAt(shown);
  const count = places.length === 1 ? "its place" : `all ${places.length} places`;
  return `${cause.label}: ${count} looked at, not seen`;
}
