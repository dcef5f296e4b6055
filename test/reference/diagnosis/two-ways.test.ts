import { describe, expect, it } from "vitest";
import { computeSuspects, type Observation, type SuspectModel } from "#engines/diagnosis";
import { askNetwork, type WireNetwork } from "./diagnosis-rows.ts";
import { inventCase } from "./invent-case.ts";

/** The suspects' model written out as a network: a table for every sign over the causes that bring it about. */
function writeNetwork(model: SuspectModel): WireNetwork {
  const states = ["yes", "no"];
  const causes = model.causes.map(({ id, prior }) => ({ name: id, states, parents: [], table: [[prior, 1 - prior]] }));
  const signs = model.signs.map(({ id, leak, strengths }) => {
    const parents = [...strengths.keys()];
    const table = Array.from({ length: 2 ** parents.length }, (_, row) => {
      const not = parents.reduce((p, cause, i) => {
        const there = (row & (1 << (parents.length - 1 - i))) === 0;
        return there ? p * (1 - (strengths.get(cause) ?? 0)) : p;
      }, 1 - leak);
      return [1 - not, not];
    });
    return { name: id, states, parents, table };
  });
  return { nodes: [...causes, ...signs] };
}

const evidenceOf = (seen: Observation): Readonly<Record<string, string>> =>
  Object.fromEntries([
    ...[...seen.complaint, ...seen.present].map((id) => [id, "yes"] as const),
    ...seen.absent.map((id) => [id, "no"] as const),
  ]);

describe("suspects and network are two ways to one figure", () => {
  it.each(Array.from({ length: 25 }, (_, i) => 1000 + i))("invented complaint %d", (seed) => {
    const { model, seen } = inventCase(seed, 8);
    const suspects = computeSuspects(model, seen);
    if (suspects.kind === "impossible") {
      expect(() => askNetwork(writeNetwork(model), evidenceOf(seen))).toThrow("impossible-evidence");
      return;
    }
    const network = askNetwork(writeNetwork(model), evidenceOf(seen));
    expect(suspects.observationProbability / network.evidence_probability).toBeCloseTo(1, 11);
    for (const { cause, there } of suspects.suspects)
      expect(there).toBeCloseTo(network.posterior[cause]?.[0] ?? Number.NaN, 11);
  });
});
