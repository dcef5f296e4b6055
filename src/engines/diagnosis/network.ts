import { findEliminationOrder } from "./elimination-order.ts";
import { entriesOver, type Factor, makeOnes, multiplyInto, restrict, type Sizes, scaleDown, sumTo } from "./factor.ts";

/** One variable of a discrete network. */
export interface NetworkNode {
  readonly name: string;
  readonly states: readonly string[];
  readonly parents: readonly string[];
  /** One row per combination of parent states, the last parent turning fastest; a probability per own state. */
  readonly table: readonly (readonly number[])[];
}

/** State of some nodes, by name. */
export type Evidence = ReadonlyMap<string, string>;

export type NetworkAnswer =
  | {
      readonly kind: "answered";
      /** Probability of every state of every node given the evidence, by name. */
      readonly posterior: ReadonlyMap<string, readonly number[]>;
      readonly evidenceProbability: number;
    }
  /** The evidence has probability nought; `alone` is a node whose state is impossible by itself, or null. */
  | { readonly kind: "impossible"; readonly alone: string | null }
  /** A table that the elimination needs would have this many entries. */
  | { readonly kind: "too-tangled"; readonly entries: number };

/** Entries of the largest table that is still made (32 MB; invented bound). */
const MOST_ENTRIES = 2 ** 22;

interface Bucket {
  readonly variable: number;
  readonly own: Factor[];
  readonly children: Bucket[];
  parent: Bucket | null;
  scope: readonly number[];
  up: Factor | null;
  down: Factor | null;
}

/** Index of a name; a name that is not listed is a fault of the caller. */
function indexOf(names: ReadonlyMap<string, number>, name: string): number {
  const index = names.get(name);
  if (index === undefined) throw new Error(`${name} is named but not listed`);
  return index;
}

function tableOf(node: NetworkNode, names: ReadonlyMap<string, number>): Factor {
  return {
    scope: [...node.parents, node.name].map((n) => indexOf(names, n)),
    values: Float64Array.from(node.table.flat()),
  };
}

/** Buckets of the variables in the order of elimination, joined to a tree; null where a table would be too large. */
function plantTree(factors: readonly Factor[], order: readonly number[], sizes: Sizes): Bucket[] | number {
  const place = new Map(order.map((v, i) => [v, i]));
  const earliest = (scope: readonly number[]): number =>
    scope.reduce((first, v) => Math.min(first, place.get(v) as number), order.length);
  const buckets = order.map(
    (variable): Bucket => ({ variable, own: [], children: [], parent: null, scope: [], up: null, down: null }),
  );
  for (const f of factors) buckets[earliest(f.scope)]?.own.push(f);
  for (const bucket of buckets) {
    const around = new Set([...bucket.own.flatMap((f) => f.scope), ...bucket.children.flatMap((c) => messageScope(c))]);
    around.delete(bucket.variable);
    bucket.scope = [
      bucket.variable,
      ...[...around].sort((a, b) => (place.get(a) as number) - (place.get(b) as number)),
    ];
    const entries = entriesOver(bucket.scope, sizes);
    if (entries > MOST_ENTRIES) return entries;
    bucket.parent = buckets[earliest(messageScope(bucket))] ?? null;
    bucket.parent?.children.push(bucket);
  }
  return buckets;
}

/** What a bucket tells its parent about: everything around it but its own variable. */
const messageScope = (bucket: Bucket): readonly number[] => bucket.scope.slice(1);

/** Product of a bucket's own tables with what its children and its parent tell it, one child left out if wanted. */
function gather(bucket: Bucket, sizes: Sizes, leftOut: Bucket | null): Factor {
  const table = makeOnes(bucket.scope, sizes);
  for (const f of bucket.own) multiplyInto(table, f, sizes);
  for (const child of bucket.children) if (child !== leftOut && child.up) multiplyInto(table, child.up, sizes);
  if (bucket.down) multiplyInto(table, bucket.down, sizes);
  return table;
}

/**
 * Posteriors of all nodes by variable elimination on the tree of its buckets: once toward the roots for the chance of the
 * evidence, once back for every node. Exact; tables are scaled by powers of two only. Names must be resolved, tables
 * complete and free of cycles. Own arrangement of the textbook method (from memory).
 */
export function solveNetwork(nodes: readonly NetworkNode[], evidence: Evidence): NetworkAnswer {
  const names = new Map(nodes.map((n, i) => [n.name, i]));
  const sizes = nodes.map((n) => n.states.length);
  const known = new Map(
    [...evidence].map(([name, state]) => {
      const i = indexOf(names, name);
      return [i, (nodes[i] as NetworkNode).states.indexOf(state)] as const;
    }),
  );
  const factors = nodes.map((node) => restrict(tableOf(node, names), known, sizes));
  const open = nodes.map((_, i) => i).filter((i) => !known.has(i));
  const order = findEliminationOrder(
    open,
    factors.map((f) => f.scope),
    sizes,
  );
  const buckets = plantTree(
    factors.filter((f) => f.scope.length > 0),
    order,
    sizes,
  );
  if (typeof buckets === "number") return { kind: "too-tangled", entries: buckets };

  const impossible = (): NetworkAnswer => ({ kind: "impossible", alone: findImpossibleAlone(nodes, evidence) });
  let power = 0;
  let probability = 1;
  const multiply = (by: number): void => {
    probability *= by;
    while (probability > 0 && probability < 2 ** -512) {
      probability *= 2 ** 512;
      power -= 512;
    }
  };
  for (const f of factors.filter((f) => f.scope.length === 0)) multiply(f.values[0] as number);
  for (const bucket of buckets) {
    const up = sumTo(messageScope(bucket), gather(bucket, sizes, null), sizes);
    const scaled = scaleDown(up);
    if (scaled === null) return impossible();
    power += scaled;
    if (bucket.parent) bucket.up = up;
    else multiply(up.values[0] as number);
  }
  if (probability === 0) return impossible();
  const posterior = new Map<string, readonly number[]>();
  for (const bucket of [...buckets].reverse()) {
    const belief = sumTo([bucket.variable], gather(bucket, sizes, null), sizes).values;
    const total = belief.reduce((sum, b) => sum + b, 0);
    posterior.set(
      (nodes[bucket.variable] as NetworkNode).name,
      Array.from(belief, (b) => b / total),
    );
    for (const child of bucket.children) {
      child.down = sumTo(messageScope(child), gather(bucket, sizes, child), sizes);
      scaleDown(child.down);
    }
  }
  for (const [i, state] of known) {
    const node = nodes[i] as NetworkNode;
    posterior.set(
      node.name,
      node.states.map((_, s) => (s === state ? 1 : 0)),
    );
  }
  return {
    kind: "answered",
    posterior: new Map(nodes.map((n) => [n.name, posterior.get(n.name) as readonly number[]])),
    evidenceProbability: probability * 2 ** power,
  };
}

/** A node whose state has probability nought whatever else is known, or null. */
function findImpossibleAlone(nodes: readonly NetworkNode[], evidence: Evidence): string | null {
  if (evidence.size === 0) return null;
  const prior = solveNetwork(nodes, new Map());
  if (prior.kind !== "answered") return null;
  for (const [name, state] of evidence) {
    const node = nodes.find((n) => n.name === name);
    if (node && prior.posterior.get(name)?.[node.states.indexOf(state)] === 0) return name;
  }
  return null;
}
