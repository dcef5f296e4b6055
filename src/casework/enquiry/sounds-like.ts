import { computeEditDistance } from "#numeric";

/** From so many letters on one of them may be another. */
const LEAST_LETTERS = 5;

/** Letters that are written for one another, as an ear has them: "clonk", "klonk", "clunck". */
const FOLDS: readonly (readonly [RegExp, string])[] = [
  [/ph/g, "f"],
  [/ck|c(?![ehiy])|q/g, "k"],
  [/^kn/, "n"],
  [/z/g, "s"],
  [/(.)\1+/g, "$1"],
];

/** Words that are taken for another though they are spelled right. */
const MISTAKEN: Readonly<Record<string, string>> = { break: "brake", breake: "brake", peddle: "pedal" };

const fold = (word: string): string => FOLDS.reduce((text, [from, to]) => text.replace(from, to), word);

/** True for a word that was probably meant for this one: as it sounds, or with one letter wrong. */
export const soundsLike = (typed: string, meant: string): boolean => {
  const word = MISTAKEN[typed] ?? typed;
  if (word.startsWith(meant) || meant === MISTAKEN[typed]) return true;
  const [one, other] = [fold(word), fold(meant)];
  if (one === other) return meant.length >= LEAST_LETTERS - 1;
  return Math.min(word.length, meant.length) >= LEAST_LETTERS && computeEditDistance(one, other) <= 1;
};
