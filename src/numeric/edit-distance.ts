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
