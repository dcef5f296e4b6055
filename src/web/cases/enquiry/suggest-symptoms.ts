import type { Symptom } from "#casework";

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

/** True where a text says a word of the table, or all words of a phrase one after the other. */
const says = (tokens: readonly string[], word: string): boolean => {
  const wanted = tokensOf(word).map(stemOf);
  return tokens.some((_, start) => wanted.every((stem, index) => tokens[start + index]?.startsWith(stem) === true));
};

/** True for two words that an owner would take for one: "brake" and "braking". */
const areOne = (one: string, other: string): boolean =>
  stemOf(one).startsWith(stemOf(other)) || stemOf(other).startsWith(stemOf(one));

/**
 * Complaints an owner's words point to: the more of its words are said the further up, and among equals the one whose
 * words fewer complaints share.
 * @returns at most six; none where no word of the table is said
 */
export const suggestSymptoms = (words: string, symptoms: readonly Symptom[]): readonly Symptom[] => {
  const tokens = tokensOf(words);
  const sharers = (word: string): number =>
    symptoms.filter((symptom) => symptom.words.some((other) => areOne(word, other))).length;
  const scored = symptoms
    .map((symptom) => {
      const said = symptom.words.filter((word) => says(tokens, word));
      const rarity = said.reduce((sum, word) => sum + 1 / sharers(word), 0);
      return { symptom, score: said.length + rarity / (symptom.words.length + 1) };
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
