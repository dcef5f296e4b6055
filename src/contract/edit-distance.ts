import { computeEditDistance } from "#numeric";

const longestCompared = 80;

/** How many letters of a word may differ for another to be meant: none of two, one of five, then a third. */
const slackFor = (letters: number): number =>
  letters <= 2 ? 0 : letters <= 5 ? 1 : Math.max(2, Math.floor(letters / 3));

/** The known word nearest to the given one, or null where none is near enough to be meant. */
export const findNearest = (given: string, known: readonly string[]): string | null => {
  if (given.length > longestCompared) return null;
  let best: string | null = null;
  let bestDistance = Number.POSITIVE_INFINITY;
  for (const word of known) {
    const distance = computeEditDistance(given.toLowerCase(), word.toLowerCase());
    if (distance < bestDistance) {
      best = word;
      bestDistance = distance;
    }
  }
  return bestDistance <= slackFor(given.length) ? best : null;
};
