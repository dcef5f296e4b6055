import { axleAndSide } from "#vehicle";
import type { SuspectWord, SymptomEntry } from "../cases/documents.ts";
import { foundAt } from "../cases/found-at.ts";
import type { PlaceFinding } from "../cases/place-finding.ts";
import { noticedWords } from "../fault/phrases.ts";
import type { FaultEffect } from "../fault-effect.ts";
import type { Cause } from "./cause.ts";
import { causes } from "./cause-table.ts";
import { feltAxle, fitToLayout, placesFor } from "./fit-to-car.ts";
import { isThere, lookState } from "./look-state.ts";
import { lastWords } from "./suspect-words.ts";
import type { Symptom } from "./symptom.ts";
import { symptoms } from "./symptom-table.ts";

/** How far a complaint has been followed up. */
export type ComplaintState = "cause-taken" | "found" | "nothing-found" | "begun" | "not-looked-at";

/** What came of one complaint of the owner. */
export interface ComplaintAnswer {
  readonly symptom: string;
  readonly label: string;
  readonly state: ComplaintState;
  /** One sentence without the complaint: "found: front left, lower arm: web torn". */
  readonly words: string;
}

/** So many of what can be behind it are named. */
const MOST_NAMED = 2;

/** A finding with what it does to the car, where that is computed. */
type Found = PlaceFinding & { readonly effect?: FaultEffect | null };

/** The complaint a wheel that turns under braking is felt as. */
const FELT_AS_PULL = "pulls-under-braking";

/** What a driver notices of a fault under braking, computed and sure of its side: "The car steps to the left."; "" where not. */
function pullOf({ effect }: Found): string {
  if (!effect?.headline.signSure || effect.headline.unit !== "deg" || effect.question.condition.braking <= 0) return "";
  const { axle, side } = axleAndSide(effect.question.corner);
  return noticedWords(axle, side, effect.headline.value, effect.question.condition);
}

/** Places whose fault is computed to pull the car under braking, whatever the table of causes says of them. */
const pullsFound = (symptom: string, findings: readonly Found[]): readonly string[] =>
  symptom === FELT_AS_PULL
    ? findings.flatMap((finding) => {
        const noticed = pullOf(finding);
        return noticed === "" ? [] : [`${foundAt(finding)} (computed: ${lower(noticed.replace(/\.$/, ""))})`];
      })
    : [];

/** An answer to every complaint that was taken up, in the order they were: none is passed over. */
export function answerComplaints(
  entries: readonly SymptomEntry[],
  findings: readonly Found[],
  said: readonly SuspectWord[],
): readonly ComplaintAnswer[] {
  const words = lastWords(said);
  return [...new Set(entries.map((e) => e.symptom))].flatMap((id): readonly ComplaintAnswer[] => {
    const symptom = symptoms.find((s) => s.id === id);
    if (symptom === undefined) return [];
    const felt = feltAxle(entries.filter((e) => e.symptom === id));
    const pulls = pullsFound(id, findings);
    return [
      { symptom: id, label: symptom.label, ...answerOf(causesOf(symptom, findings), findings, felt, words, pulls) },
    ];
  });
}

/** Causes behind a complaint that can sit on this car, the commonest first. */
const causesOf = (symptom: Symptom, findings: readonly PlaceFinding[]): readonly Cause[] =>
  fitToLayout(symptom, findings)
    .causes.toSorted(([, a], [, b]) => b - a)
    .flatMap(([id]) => causes.find((c) => c.id === id) ?? []);

function answerOf(
  behind: readonly Cause[],
  findings: readonly PlaceFinding[],
  felt: ReturnType<typeof feltAxle>,
  words: ReturnType<typeof lastWords>,
  pulls: readonly string[],
): Pick<ComplaintAnswer, "state" | "words"> {
  const taken = behind.filter(({ id }) => words.get(id)?.word === "accepted");
  if (taken.length > 0)
    return { state: "cause-taken", words: `taken as its cause: ${named(taken.map((c) => lower(c.label)))}` };
  const left = behind.filter(({ id }) => words.get(id)?.word !== "ruled-out");
  const places = left.map((cause) => ({ cause, at: placesFor(cause, findings, felt) }));
  const shown = places.flatMap(({ cause, at }) => at.filter((place) => isThere(cause, place)));
  const bySight = shown.map(foundAt).filter((at) => pulls.every((pull) => !pull.startsWith(at)));
  const found = [...new Set([...pulls, ...bySight])];
  if (found.length > 0) return { state: "found", words: `found, and can be behind it: ${named(found)}` };
  const visible = places.filter(({ at }) => at.length > 0);
  const done = visible.filter(({ cause, at }) => lookState(cause, at) === "not there");
  if (visible.length > 0 && done.length === visible.length)
    return { state: "nothing-found", words: "looked at wherever it can sit, and nothing found that explains it" };
  const begun = visible.some(({ at }) => at.some((place) => place.grade !== null));
  return begun
    ? {
        state: "begun",
        words: `nothing found so far; ${done.length} of ${visible.length} things that can be behind it are looked at to the end`,
      }
    : { state: "not-looked-at", words: "not looked at yet" };
}

const named = (parts: readonly string[]): string =>
  parts.length <= MOST_NAMED
    ? parts.join("; ")
    : `${parts.slice(0, MOST_NAMED).join("; ")}; and ${parts.length - MOST_NAMED} more`;

const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** A complaint with what came of it, as one sentence. */
export const complaintWords = ({ label, words }: ComplaintAnswer): string => `${label}: ${words}.`;
