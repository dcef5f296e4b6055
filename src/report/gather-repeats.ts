import type { RemedyLine } from "./owners-page-words.ts";

/** A sentence shorter than this stays where it is, however often it is said: "Now.". */
const LEAST_LENGTH = 40;

const sentencesOf = (words: string): readonly string[] => words.split(/(?<=\.)\s+(?=\p{Lu})/u);

/** "numbers 1, 2 and 4". */
const numbersWords = (numbers: readonly number[]): string =>
  `numbers ${numbers.slice(0, -1).join(", ")} and ${numbers.at(-1) ?? ""}`;

/**
 * Takes out of the rows what several of them say in the same words about waiting, so that it is said once below them.
 * @returns the rows without it, and one note for each such sentence with the numbers it holds for
 */
export function gatherRepeats(lines: readonly RemedyLine[]): {
  readonly lines: readonly RemedyLine[];
  readonly notes: readonly string[];
} {
  const saidBy = new Map<string, number[]>();
  for (const { number, waiting } of lines)
    for (const sentence of new Set(sentencesOf(waiting)))
      if (sentence.length >= LEAST_LENGTH) saidBy.set(sentence, [...(saidBy.get(sentence) ?? []), number]);
  const repeated = new Map([...saidBy].filter(([, numbers]) => numbers.length > 1));
  return {
    lines: lines.map((line) => ({
      ...line,
      waiting: sentencesOf(line.waiting)
        .filter((sentence) => !repeated.has(sentence))
        .join(" "),
    })),
    notes: [...repeated].map(([sentence, numbers]) => `Of ${numbersWords(numbers)}: ${sentence}`),
  };
}
