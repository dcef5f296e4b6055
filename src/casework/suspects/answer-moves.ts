import { computeSuspects, type Suspect } from "#engines/diagnosis";
import type { Cause } from "./cause.ts";
import { lookSign, type SuspectQuestion, withWords } from "./suspect-question.ts";
import { wearSignWords } from "./wear-signs.ts";

/** What one answer has done to the chance of one suspect, everything else as it is. */
export interface Move {
  /** Id of the cause the answer is about, or of the wear of a tyre. */
  readonly about: string;
  /** True: somebody's word; false: a look. */
  readonly said: boolean;
  readonly words: string;
  /** Chance that curing the suspect cures the complaint if this answer had not been given. */
  readonly without: number;
  /** How many times the odds are what they would be without the answer; below 1 it speaks against. */
  readonly times: number;
}

/** With more complaints at once it takes too long to leave out each answer in turn (invented bound). */
const MOST_COMPLAINTS = 8;
/** An answer that moves the odds less than this is not worth a line (invented). */
const LEAST_TIMES = 1.1;
/** Odds are told between one in a million and a million to one. */
const SMALLEST = 1e-6;

const oddsOf = (chance: number): number => {
  const held = Math.min(1 - SMALLEST, Math.max(SMALLEST, chance));
  return held / (1 - held);
};

interface Answer extends Pick<Move, "about" | "said" | "words"> {
  /** Chances of all suspects without it; null: what is left cannot all be true. */
  readonly without: readonly Suspect[] | null;
}

const askWithoutSigns = (question: SuspectQuestion, left: readonly string[]): readonly Suspect[] | null => {
  const { observation } = question;
  const others = (signs: readonly string[]): string[] => signs.filter((sign) => !left.includes(sign));
  const answer = computeSuspects(question.model, {
    ...observation,
    present: others(observation.present),
    absent: others(observation.absent),
  });
  return answer.kind === "impossible" ? null : answer.suspects;
};

const askWithoutWord = (question: SuspectQuestion, cause: string): readonly Suspect[] | null => {
  const words = new Map([...question.words].filter(([said]) => said !== cause));
  const answer = computeSuspects(withWords(question.untouched, words), question.observation);
  return answer.kind === "impossible" ? null : answer.suspects;
};

const wordOf = { accepted: "accepted as the cause", "ruled-out": "ruled out", open: "open" } as const;

/** Causes a look has answered, by the words for it: one and the same look can speak of several, and is told once. */
function groupLooks(
  question: SuspectQuestion,
  wordsOf: (cause: Cause, state: "there" | "not there") => string,
): ReadonlyMap<string, readonly string[]> {
  const groups = new Map<string, readonly string[]>();
  for (const cause of question.known) {
    const state = question.state.get(cause.id);
    if (state !== "there" && state !== "not there") continue;
    const words = wordsOf(cause, state);
    groups.set(words, [...(groups.get(words) ?? []), cause.id]);
  }
  return groups;
}

/**
 * What each answer has done to each suspect: what was seen, and what somebody said, each left out in turn.
 * @param wordsOf a look's answer in words
 * @returns by suspect, the strongest first; empty where there are too many complaints
 */
export function computeMoves(
  question: SuspectQuestion,
  now: readonly Suspect[],
  wordsOf: (cause: Cause, state: "there" | "not there") => string,
): ReadonlyMap<string, readonly Move[]> {
  if (question.observation.complaint.length > MOST_COMPLAINTS) return new Map();
  const looks = [...groupLooks(question, wordsOf)].map(
    ([words, seen]): Answer => ({
      about: seen[0] ?? "",
      said: false,
      words,
      without: askWithoutSigns(question, seen.map(lookSign)),
    }),
  );
  const said = question.known.flatMap((cause): Answer[] => {
    const word = question.words.get(cause.id);
    return word === undefined
      ? []
      : [
          {
            about: cause.id,
            said: true,
            words: `${cause.label}: ${wordOf[word.word]}`,
            without: askWithoutWord(question, cause.id),
          },
        ];
  });
  const wear = question.wear.map(
    (sign): Answer => ({
      about: sign.id,
      said: false,
      words: wearSignWords(sign),
      without: askWithoutSigns(question, [sign.id]),
    }),
  );
  const answers = [...said, ...looks, ...wear];
  return new Map(
    now.map(({ cause, cures }) => {
      const moves = answers.flatMap(({ about, said: isSaid, words, without }): Move[] => {
        const chance = without?.find((s) => s.cause === cause)?.cures;
        if (chance === undefined) return [];
        const times = oddsOf(cures) / oddsOf(chance);
        return Math.max(times, 1 / times) < LEAST_TIMES ? [] : [{ about, said: isSaid, words, without: chance, times }];
      });
      return [cause, moves.toSorted((a, b) => Math.abs(Math.log(b.times)) - Math.abs(Math.log(a.times)))] as const;
    }),
  );
}
