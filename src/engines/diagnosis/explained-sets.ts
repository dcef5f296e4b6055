/**
 * Chances of which signs are explained. A set of signs is a bit mask; a table holds the chance of every set. Causes act
 * independently, so the set explained by several is the union of what each explains. All terms are positive and nothing
 * is subtracted; the work grows with the causes times 2 to the number of signs, not with the subsets of causes.
 */
export type SetTable = Float64Array;

/** What one cause does: with weight `absent` nothing, with weight `present` it brings about each sign with its strength. */
export interface Action {
  readonly strengths: readonly number[];
  readonly present: number;
  readonly absent: number;
}

/** Nothing explained yet, for certain. */
export function explainNothing(signs: number): SetTable {
  const table = new Float64Array(2 ** signs);
  table[0] = 1;
  return table;
}

/** The table after one more cause. */
export function unite(table: SetTable, { strengths, present, absent }: Action): SetTable {
  const out = table.map((chance) => chance * present);
  strengths.forEach((q, sign) => {
    if (q === 0) return;
    const bit = 1 << sign;
    for (let set = 0; set < out.length; set++) {
      if (set & bit) continue;
      const chance = out[set] as number;
      out[set | bit] = (out[set | bit] as number) + q * chance;
      out[set] = (1 - q) * chance;
    }
  });
  if (absent !== 0)
    for (let set = 0; set < out.length; set++) out[set] = (out[set] as number) + absent * (table[set] as number);
  return out;
}

/** For every set the chance that all of it, and perhaps more, is explained. */
function atLeast(table: SetTable): SetTable {
  const out = table.slice();
  for (let bit = 1; bit < out.length; bit *= 2) {
    for (let set = 0; set < out.length; set++)
      if (!(set & bit)) out[set] = (out[set] as number) + (out[set | bit] as number);
  }
  return out;
}

/**
 * For every cause the chance that all signs are explained when this cause does what `instead` says and all others what
 * `actions` say; `start` is what is explained without any of them.
 */
export function explainAllWith(start: SetTable, actions: readonly Action[], instead: readonly Action[]): number[] {
  const full = start.length - 1;
  const after: SetTable[] = [];
  let rest: SetTable = explainNothing(Math.log2(start.length));
  for (let i = actions.length - 1; i >= 0; i--) {
    after[i] = atLeast(rest);
    rest = unite(rest, actions[i] as Action);
  }
  let before = start;
  return actions.map((own, i) => {
    const others = after[i] as SetTable;
    const chance = unite(before, instead[i] as Action).reduce(
      (sum, c, set) => sum + c * (others[full & ~set] as number),
      0,
    );
    before = unite(before, own);
    return chance;
  });
}
