import { z } from "zod";
import { type NetworkAnswer, solveNetwork } from "#engines/diagnosis";
import type { Door, DoorAnswer } from "../door.ts";
import { checkNetwork } from "./diagnosis-check.ts";

const name = z.string().min(1).max(120);
const node = z.strictObject({
  name,
  states: z.array(name).min(1).max(100),
  parents: z.array(name).max(30).default([]),
  table: z
    .array(z.array(z.number().min(0).max(1)))
    .min(1)
    .describe("rows in the order of parent states, the last parent fastest; a probability for each own state"),
});
const input = z.strictObject({
  nodes: z.array(node).min(1).max(1000),
  evidence: z.record(z.string(), z.string()).default({}),
});
type Input = z.output<typeof input>;

const output = z.strictObject({
  posterior: z.record(z.string(), z.array(z.number())).describe("by node, in the order of its states"),
  evidence_probability: z.number(),
});

function refuse(answer: Exclude<NetworkAnswer, { kind: "answered" }>, wire: Input): DoorAnswer {
  if (answer.kind === "too-tangled")
    return {
      findings: [
        {
          code: "too-tangled",
          path: "nodes",
          got: `a network that needs a table of ${answer.entries} entries`,
          needed: "a network whose tables fit",
          hint: "Split nodes with many parents, or give more evidence.",
        },
      ],
    };
  const { alone } = answer;
  return {
    findings: [
      {
        code: "impossible-evidence",
        path: alone === null ? "evidence" : `evidence.${alone}`,
        got: alone === null ? "states that cannot stand together" : JSON.stringify(wire.evidence[alone] ?? ""),
        needed: "evidence whose probability is more than 0",
        hint: "Something in the tables is exactly 0 that was seen all the same.",
      },
    ],
  };
}

export const diagnosisNetwork: Door<Input> = {
  id: "diagnosis.network",
  summary: "Exact probabilities of all nodes of a discrete network, given what is known of some",
  input: input as unknown as z.ZodType<Input>,
  output,
  relation: "joint = product of the tables; sums over it by variable elimination",
  source: "textbook variable elimination, from memory; docs/method/diagnosis.md",
  accuracy: "1e-12 against summing over every combination (docs/verification.md)",
  check: checkNetwork,
  compute(wire) {
    const answer = solveNetwork(wire.nodes, new Map(Object.entries(wire.evidence)));
    if (answer.kind !== "answered") return refuse(answer, wire);
    const posterior = Object.fromEntries([...answer.posterior].map(([node, p]) => [node, [...p]]));
    return { output: { posterior, evidence_probability: answer.evidenceProbability } };
  },
};
