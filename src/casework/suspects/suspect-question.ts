import {
  type Observation,
  type Reliability,
  type SharesOfSymptom,
  type SuspectModel,
  seedModel,
  signOfLook,
} from "#engines/diagnosis";
import type { SuspectWord } from "../cases/documents.ts";
import type { Cause } from "./cause.ts";
import { causes } from "./cause-table.ts";
import type { Symptom } from "./symptom.ts";
import type { WearSign } from "./wear-signs.ts";

/** How far looking by hand and eye can be trusted (from memory, start values; outcomes teach better ones). */
const SENSITIVITY = 0.85;
const SPECIFICITY = 0.95;
/** A sign that is the cause itself (torn through, fluid gone): seen in half of the cases, hardly ever else (from memory). */
const CERTAIN = { sensitivity: 0.5, specificity: 0.9998 } as const;
/** A hydraulic bush that has lost its fluid looks whole in half of the cases (invented). */
const SENSITIVITY_HIDDEN = 0.5;

/** What looking at all places of a cause has shown. */
export type LookState = "there" | "not there" | "open";

/** What the chance of one suspect is computed from; everything invented until outcomes teach better. */
export interface SuspectBasis {
  /** Chance that it is there on a car as it drives in, before anybody speaks of a complaint. */
  readonly prior: number;
  /** By complaint: the stated share, the chance that it brings the complaint about, and that nothing of the table does. */
  readonly complaints: readonly {
    readonly label: string;
    readonly share: number;
    readonly strength: number;
    readonly leak: number;
  }[];
  /** Chance that a look at all its places shows it where it is there, and shows nothing where it is not. */
  readonly sensitivity: number;
  readonly specificity: number;
  readonly state: LookState;
  /** True where the sign that was seen is the cause itself; sensitivity and specificity are then those of such a sign. */
  readonly certain: boolean;
}

/** A model with what is known, as the door diagnosis.suspects takes them. */
export interface SuspectQuestion {
  readonly known: readonly Cause[];
  /** Priors with what somebody said worked in: accepted is there, ruled out is not. */
  readonly model: SuspectModel;
  /** Priors as the tables give them. */
  readonly untouched: SuspectModel;
  readonly observation: Observation;
  readonly state: ReadonlyMap<string, LookState>;
  readonly words: ReadonlyMap<string, SuspectWord>;
  readonly wear: readonly WearSign[];
  readonly basisOf: (cause: string) => SuspectBasis;
}

/** The sign of a look at all places of a cause. */
export const lookSign = (cause: string): string => `look:${cause}`;

const reliabilityOf = (cause: Cause | undefined, certain: boolean): Reliability =>
  certain
    ? CERTAIN
    : {
        sensitivity: cause?.kinds.includes("hydraulic-bush") ? SENSITIVITY_HIDDEN : SENSITIVITY,
        specificity: SPECIFICITY,
      };

/** A model in which what somebody said of its causes is certain. */
export const withWords = (model: SuspectModel, words: ReadonlyMap<string, SuspectWord>): SuspectModel => ({
  ...model,
  causes: model.causes.map((cause) => {
    const said = words.get(cause.id)?.word;
    return said === undefined ? cause : { ...cause, prior: said === "accepted" ? 1 : 0 };
  }),
});

/**
 * The question behind complaints: causes with their priors, complaints and looks as signs, and what was seen.
 * @param wear how the tyres have worn, as far as it speaks of these causes
 * @param isCertain whether what was seen of a cause is the cause itself
 */
export function buildQuestion(
  complaints: readonly Symptom[],
  words: ReadonlyMap<string, SuspectWord>,
  stateOf: (cause: Cause) => LookState,
  isCertain: (cause: Cause) => boolean,
  wear: (known: readonly string[]) => readonly WearSign[] = () => [],
): SuspectQuestion {
  const stated: SharesOfSymptom[] = complaints.map((s) => ({
    symptom: s.id,
    shares: new Map(s.causes.map(([cause, share]) => [cause, share / 100])),
  }));
  const seeded = seedModel(stated);
  const known = causes.filter((c) => seeded.causes.some((s) => s.id === c.id));
  const state = new Map(known.map((c) => [c.id, stateOf(c)]));
  const certain = new Set(known.flatMap((c) => (state.get(c.id) === "there" && isCertain(c) ? [c.id] : [])));
  const worn = wear(known.map(({ id }) => id));
  const untouched: SuspectModel = {
    causes: seeded.causes,
    signs: [
      ...seeded.signs,
      ...known.map((c) => {
        const { sensitivity, specificity } = reliabilityOf(c, certain.has(c.id));
        return signOfLook(lookSign(c.id), specificity, new Map([[c.id, sensitivity]]));
      }),
      ...worn,
    ],
  };
  const shown = (wanted: LookState): string[] =>
    known.flatMap((c) => (state.get(c.id) === wanted ? [lookSign(c.id)] : []));
  const basisOf = (id: string): SuspectBasis => {
    const cause = known.find((c) => c.id === id);
    return {
      prior: untouched.causes.find((c) => c.id === id)?.prior ?? 0,
      complaints: complaints.map((s, i) => ({
        label: s.label,
        share: stated[i]?.shares.get(id) ?? 0,
        strength: seeded.signs[i]?.strengths.get(id) ?? 0,
        leak: seeded.signs[i]?.leak ?? 0,
      })),
      ...reliabilityOf(cause, certain.has(id)),
      state: state.get(id) ?? "open",
      certain: certain.has(id),
    };
  };
  return {
    known,
    model: withWords(untouched, words),
    untouched,
    observation: {
      complaint: complaints.map((s) => s.id),
      present: [...shown("there"), ...worn.map(({ id }) => id)],
      absent: shown("not there"),
    },
    state,
    words,
    wear: worn,
    basisOf,
  };
}
