/** The largest value in a closed range, where it is, and whether that is an end of the range. */
export interface LargestInRange {
  readonly at: number;
  readonly value: number;
  readonly atEnd: boolean;
}

/** The largest of a function at the ends of a closed range and at every inner place where it can turn. */
export function findLargest(
  value: (at: number) => number,
  [low, high]: readonly [number, number],
  turns: readonly number[],
): LargestInRange {
  let best: LargestInRange = { at: low, value: value(low), atEnd: true };
  const last = { at: high, value: value(high), atEnd: true };
  if (last.value > best.value) best = last;
  for (const at of turns) {
    if (at <= low || at >= high) continue;
    const here = value(at);
    if (here > best.value) best = { at, value: here, atEnd: false };
  }
  return best;
}
