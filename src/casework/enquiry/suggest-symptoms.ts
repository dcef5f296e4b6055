import type { Symptom } from "../suspects/symptom.ts";
import { readSaidWhen, type SaidWhen } from "./said-when.ts";
import { soundsLike } from "./sounds-like.ts";

/** Most that are offered at once; more are found in the whole list. */
const MOST_OFFERED = 6;
/** What scores less than this share of the best is not meant. */
const LEAST_SHARE = 0.4;

const ENDINGS = /(ings?|ed|es|s)$/;

/** A word without its ending, so that "pulls", "pulling" and "pull" are one. */
const stemOf = (word: string): string => {
  const stem = word.replace(ENDINGS, "");
  return stem.length < 3 ? word : stem;
};

const tokensOf = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .split(/[^\p{Letter}\d]+/u)
    .filter((token) => token !== "");

/** What a word counts that was spelled another way than in the table. */
const SPELLED_OTHERWISE = 0.8;

/** 1 where a text says a word of the table, or all words of a phrase one after the other; less as it may be spelled; 0. */
const howFarSaid = (tokens: readonly string[], word: string): number => {
  const wanted = tokensOf(word).map(stemOf);
  const isSaid = (isIt: (token: string, stem: string) => boolean): boolean =>
    tokens.some((_, start) => wanted.every((stem, index) => isIt(tokens[start + index] ?? "", stem)));
  if (isSaid((token, stem) => token.startsWith(stem))) return 1;
  return isSaid((token, stem) => token.startsWith(stem) || soundsLike(stemOf(token), stem)) ? SPELLED_OTHERWISE : 0;
};

/** True for two words that an owner would take for one: "brake" and "braking". */
const areOne = (one: string, other: string): boolean =>
  stemOf(one).startsWith(stemOf(other)) || stemOf(other).startsWith(stemOf(one));

/** What a complaint counts that is only felt when nobody said so, and one felt just when it was said. */
const NOT_THEN = 0.5;
const JUST_THEN = 1.5;

/** Words of the table that say only where or when something is felt, and not what. */
const ONLY_WHERE_OR_WHEN: ReadonlySet<string> = new Set(
  "front rear side corner wheel first speed motorway braking brake turning parking straight power accelerat overnight".split(
    " ",
  ),
);
/** What a complaint counts of which only where or when was said. */
const NOT_WHAT = 0.5;

/** How well a complaint fits when it is felt: one under braking is not meant by a shake at a speed. */
const fitToWhen = ({ words }: Symptom, when: SaidWhen): number => {
  const isOf = (of: string): boolean => words.some((word) => areOne(of, word));
  if (isOf("braking") && !when.braking && when.speed) return NOT_THEN;
  return isOf("speed") && when.speed && !when.braking ? JUST_THEN : 1;
};

/**
 * Complaints an owner's words point to: the more of its words are said the further up, and among equals the one whose
 * words fewer complaints share.
 * @returns at most six; none where no word of the table is said
 */
export const suggestSymptoms = (words: string, symptoms: readonly Symptom[]): readonly Symptom[] => {
  const tokens = tokensOf(words);
  const sharers = (word: string): number =>
    symptoms.filter((symptom) => symptom.words.some((other) => areOne(word, other))).length;
  const when = readSaidWhen(words);
  const scored = symptoms
    .map((symptom) => {
      const said = symptom.words.map((word) => ({ word, far: howFarSaid(tokens, word) })).filter(({ far }) => far > 0);
      const rarity = said.reduce((sum, { word, far }) => sum + far / sharers(word), 0);
      const sum = said.reduce((all, { far }) => all + far, 0);
      const what = said.every(({ word }) => ONLY_WHERE_OR_WHEN.has(word)) ? NOT_WHAT : 1;
      const score = what * (sum + rarity / (symptom.words.length + 1));
      return { symptom, score: sum === 0 ? 0 : score * fitToWhen(symptom, when) };
    })
    .filter(({ score }) => score > 0)
    .toSorted((one, other) => other.score - one.score);
  const best = scored[0]?.score ?? 0;
  return scored
    .filter(({ score }) => score >= LEAST_SHARE * best)
    .slice(0, MOST_OFFERED)
    .map(({ symptom }) => symptom);
};

/** Complaints whose label or words hold what is typed; all of them where nothing is typed. */
export const findSymptoms = (typed: string, symptoms: readonly Symptom[]): readonly Symptom[] => {
  const asked = typed.trim().toLowerCase();
  if (asked === "") return symptoms;
  return symptoms.filter(
    ({ label, words }) => label.toLowerCase().includes(asked) || words.some((word) => word.includes(asked)),
  );
};
