import type { Sizes } from "./factor.ts";

/**
 * Order in which variables are summed out: always the one that joins the fewest strangers, then the one whose table is
 * the smallest, then the first; so the same network always gives the same order.
 */
export function findEliminationOrder(
  variables: readonly number[],
  scopes: readonly (readonly number[])[],
  sizes: Sizes,
): number[] {
  const friends = new Map(variables.map((v) => [v, new Set<number>()]));
  for (const scope of scopes) {
    for (const a of scope) for (const b of scope) if (a !== b) friends.get(a)?.add(b);
  }
  const strangers = (v: number): number => {
    const near = [...(friends.get(v) ?? [])];
    let count = 0;
    for (let i = 0; i < near.length; i++) {
      const known = friends.get(near[i] as number);
      for (let j = i + 1; j < near.length; j++) if (!known?.has(near[j] as number)) count++;
    }
    return count;
  };
  const tableOf = (v: number): number =>
    [...(friends.get(v) ?? [])].reduce((product, w) => product * (sizes[w] as number), sizes[v] as number);
  const left = [...variables];
  const rank = new Map(left.map((v) => [v, { strangers: strangers(v), table: tableOf(v) }]));
  const order: number[] = [];
  while (left.length > 0) {
    let best = 0;
    for (let i = 1; i < left.length; i++) {
      const a = rank.get(left[i] as number);
      const b = rank.get(left[best] as number);
      if (a && b && (a.strangers < b.strangers || (a.strangers === b.strangers && a.table < b.table))) best = i;
    }
    const v = left.splice(best, 1)[0] as number;
    order.push(v);
    const near = [...(friends.get(v) ?? [])];
    for (const a of near) {
      friends.get(a)?.delete(v);
      for (const b of near) if (a !== b) friends.get(a)?.add(b);
    }
    friends.delete(v);
    const touched = new Set(near.flatMap((a) => [a, ...(friends.get(a) ?? [])]));
    for (const w of touched) rank.set(w, { strangers: strangers(w), table: tableOf(w) });
  }
  return order;
}
