/** Number of letters inserted, deleted, replaced or swapped with their neighbour that turn one word into the other (optimal string alignment). */
export const computeEditDistance = (from: string, to: string): number => {
  let before: readonly number[] = [];
  let row: readonly number[] = Array.from({ length: to.length + 1 }, (_, column) => column);
  for (let i = 1; i <= from.length; i++) {
    const next = [i];
    for (let j = 1; j <= to.length; j++) {
      const replaced = (row[j - 1] ?? 0) + (from[i - 1] === to[j - 1] ? 0 : 1);
      const swapped = from[i - 1] === to[j - 2] && from[i - 2] === to[j - 1] ? (before[j - 2] ?? 0) + 1 : replaced;
      next.push(Math.min(replaced, swapped, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    before = row;
    row = next;
  }
  return row[to.length] ?? 0;
};

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
