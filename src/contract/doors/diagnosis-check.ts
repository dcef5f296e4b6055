import type { Finding } from "#numeric";
import { findNearest } from "../edit-distance.ts";
import { entriesOf, isNumber, isObject, type Loose } from "./loose-corner.ts";
import { checkNamed, checkRepeated, type NamedEntry, namesOf } from "./named-entries.ts";

/** How far the probabilities of a row may be from one together. */
const ROW_SLACK = 1e-6;

interface LooseNode {
  readonly path: string;
  readonly name: string | null;
  readonly states: readonly string[] | null;
  readonly parents: readonly string[] | null;
  readonly table: unknown;
}

const textList = (x: unknown): readonly string[] | null =>
  Array.isArray(x) && x.every((s) => typeof s === "string") ? x : null;

function readNodes(doc: Loose): readonly LooseNode[] {
  return entriesOf(doc.nodes).map(([i, node]) => ({
    path: `nodes[${i}]`,
    name: typeof node.name === "string" ? node.name : null,
    states: textList(node.states),
    parents: textList(node.parents ?? []),
    table: node.table,
  }));
}

const placed = (list: readonly string[] | null, path: string): readonly NamedEntry[] =>
  (list ?? []).map((name, i) => ({ name, path: `${path}[${i}]` }));

/** One row: as many probabilities as states, none outside 0 to 1, together one. */
function checkRow(row: unknown, path: string, states: number): Finding[] {
  if (!Array.isArray(row)) return [];
  if (row.length !== states)
    return [
      {
        code: "wrong-length",
        path,
        got: `a list of ${row.length}`,
        needed: `${states} probabilities, one for each state`,
        hint: "",
      },
    ];
  if (!row.every(isNumber)) return [];
  const outside = row.flatMap((p, i) => (p < 0 || p > 1 ? [i] : []));
  if (outside.length > 0) return [];
  const sum = row.reduce<number>((total, p) => total + p, 0);
  if (Math.abs(sum - 1) <= ROW_SLACK) return [];
  return [
    {
      code: "not-consistent",
      path,
      got: `probabilities that add up to ${Number(sum.toPrecision(9))}`,
      needed: "probabilities that add up to 1",
      hint: "A row says what the node does in one combination of its parents' states.",
    },
  ];
}

/** A table: one row for each combination of the parents' states. */
function checkTable(node: LooseNode, known: ReadonlyMap<string, LooseNode>): Finding[] {
  if (!Array.isArray(node.table) || !node.states) return [];
  const states = node.states.length;
  const findings = node.table.flatMap((row, i) => checkRow(row, `${node.path}.table[${i}]`, states));
  const counts = node.parents?.map((p) => known.get(p)?.states?.length);
  if (!counts || counts.some((c) => c === undefined)) return findings;
  const needed = counts.reduce<number>((product, c) => product * (c ?? 1), 1);
  if (node.table.length !== needed)
    findings.push({
      code: "wrong-length",
      path: `${node.path}.table`,
      got: `${node.table.length} ${node.table.length === 1 ? "row" : "rows"}`,
      needed: `${needed} ${needed === 1 ? "row" : "rows"}${counts.length > 0 ? `: ${counts.join(" x ")} combinations of ${(node.parents ?? []).join(", ")}` : ""}`,
      hint: counts.length > 0 ? "The last parent turns fastest." : "A node without parents has one row.",
    });
  return findings;
}

/** The first cycle among the parents, as a chain of names that ends where it began, or null. */
function findCycle(nodes: readonly LooseNode[], known: ReadonlyMap<string, LooseNode>): readonly string[] | null {
  const done = new Set<string>();
  for (const { name: start } of nodes) {
    if (start === null || done.has(start)) continue;
    const trail: { name: string; next: number }[] = [{ name: start, next: 0 }];
    while (trail.length > 0) {
      const top = trail[trail.length - 1] as { name: string; next: number };
      const parent = known.get(top.name)?.parents?.[top.next++];
      if (parent === undefined) {
        done.add(top.name);
        trail.pop();
        continue;
      }
      const at = trail.findIndex((t) => t.name === parent);
      if (at >= 0) return [...trail.slice(at).map((t) => t.name), parent].reverse();
      if (!done.has(parent) && known.has(parent)) trail.push({ name: parent, next: 0 });
    }
  }
  return null;
}

function checkEvidence(doc: Loose, known: ReadonlyMap<string, LooseNode>): Finding[] {
  if (!isObject(doc.evidence)) return [];
  const nodes = [...known.keys()].map((name) => ({ name, path: "" }));
  return Object.entries(doc.evidence).flatMap(([name, state]): Finding[] => {
    const path = `evidence.${name}`;
    const node = known.get(name);
    if (!node) return checkNamed([{ name, path }], nodes, "node");
    if (typeof state !== "string" || !node.states || node.states.includes(state)) return [];
    const nearest = findNearest(state, node.states);
    return [
      {
        code: "unknown-word",
        path,
        got: JSON.stringify(state.slice(0, 80)),
        needed: `one of: ${node.states
          .slice(0, 12)
          .map((s) => JSON.stringify(s))
          .join(", ")}`,
        hint: nearest === null ? "" : `The nearest is ${JSON.stringify(nearest)}.`,
      },
    ];
  });
}

/** Everything about a network that no schema can see: names, tables, cycles, evidence. */
export function checkNetwork(doc: unknown): Finding[] {
  if (!isObject(doc)) return [];
  const nodes = readNodes(doc);
  const names = namesOf(doc.nodes, "nodes", "name");
  const known = new Map(nodes.flatMap((n) => (n.name === null ? [] : [[n.name, n] as const])));
  const findings = [...checkRepeated(names)];
  for (const node of nodes) {
    const parents = placed(node.parents, `${node.path}.parents`);
    findings.push(...checkRepeated(placed(node.states, `${node.path}.states`)), ...checkRepeated(parents));
    findings.push(...checkNamed(parents, names, "node"), ...checkTable(node, known));
  }
  const cycle = findCycle(nodes, known);
  if (cycle) {
    const first = nodes.find((n) => n.name === cycle[cycle.length - 1]);
    findings.push({
      code: "cycle",
      path: first ? `${first.path}.parents` : "nodes",
      got: cycle.slice(0, 12).join(" to "),
      needed: "parents that never lead back to where they began",
      hint: "An effect cannot be its own cause: take out one of these parents.",
    });
  }
  return [...findings, ...checkEvidence(doc, known)];
}
