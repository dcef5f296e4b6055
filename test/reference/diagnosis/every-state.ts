import { seededRandom } from "#numeric";
import type { WireNetwork } from "./diagnosis-rows.ts";

/** An invented network of up to 9 nodes with 2 to 4 states, zeros among its chances, and some evidence. */
export function inventNetwork(seed: number): {
  readonly network: WireNetwork;
  readonly evidence: Readonly<Record<string, string>>;
} {
  const random = seededRandom(seed * 7919);
  const whole = (low: number, high: number): number => low + Math.floor(random() * (high - low + 1));
  const nodes: WireNetwork["nodes"][number][] = [];
  for (let i = 0, n = whole(2, 9); i < n; i++) {
    const states = Array.from({ length: whole(2, 4) }, (_, s) => `s${s}`);
    const parents = nodes.filter(() => random() < 0.35).slice(0, 3);
    const rows = parents.reduce((product, p) => product * p.states.length, 1);
    const table = Array.from({ length: rows }, () => {
      const raw = states.map(() => (random() < 0.1 ? 0 : random()));
      const total = raw.reduce((a, b) => a + b, 0);
      return total === 0 ? states.map((_, s) => (s === 0 ? 1 : 0)) : raw.map((p) => p / total);
    });
    nodes.push({ name: `n${i}`, states, parents: parents.map((p) => p.name), table });
  }
  // Listed backwards, so that children stand before their parents.
  const known = nodes
    .filter(() => random() < 0.25)
    .map((n) => [n.name, n.states[whole(0, n.states.length - 1)] as string] as const);
  return { network: { nodes: nodes.reverse() }, evidence: Object.fromEntries(known) };
}

/** Chance of the evidence and posteriors by summing the joint over every combination of states. */
export function sumOverStates({ nodes }: WireNetwork, evidence: Readonly<Record<string, string>>) {
  const posterior: Record<string, number[]> = Object.fromEntries(nodes.map((n) => [n.name, n.states.map(() => 0)]));
  let probability = 0;
  const state = new Map<string, number>();
  const go = (i: number): void => {
    const node = nodes[i];
    if (node) {
      node.states.forEach((name, s) => {
        if (evidence[node.name] !== undefined && evidence[node.name] !== name) return;
        state.set(node.name, s);
        go(i + 1);
      });
      return;
    }
    let joint = 1;
    for (const n of nodes) {
      let row = 0;
      for (const parent of n.parents) {
        const p = nodes.find((m) => m.name === parent);
        row = row * (p?.states.length ?? 0) + (state.get(parent) ?? 0);
      }
      joint *= n.table[row]?.[state.get(n.name) ?? 0] ?? Number.NaN;
    }
    probability += joint;
    for (const n of nodes) {
      const own = posterior[n.name] as number[];
      const s = state.get(n.name) ?? 0;
      own[s] = (own[s] as number) + joint;
    }
  };
  go(0);
  for (const own of Object.values(posterior))
    own.forEach((p, s) => {
      own[s] = p / probability;
    });
  return { probability, posterior };
}
