import { expect, it } from "vitest";
import type { ProgrammeSolver } from "#engines/planning";
import { createMemory } from "../../src/casework/cases/appraisal-memory.ts";
import { appraiseVisit } from "../../src/casework/cases/appraise.ts";
import { createRememberingSolver } from "../../src/casework/cases/remembering-solver.ts";
import { usualPlan } from "../../src/casework/cases/usual-plan.ts";
import { look, reading, record, solver } from "./made-visit.ts";

const found = [
  look("rear-left/trailing-link/inner-bush", { kind: "signs", signs: ["web-torn"] }),
  ...[1, 2, 3, 4].map((i) => look("front-left/disc/thickness", reading("thickness", 0.0215, 0.000005, String(i)))),
];
const counting = (): { readonly solver: ProgrammeSolver; readonly calls: () => number } => {
  let calls = 0;
  return {
    solver: {
      solve: (...asked) => {
        calls++;
        return solver.solve(...asked);
      },
    },
    calls: () => calls,
  };
};
const agreed = {
  ...usualPlan(90_000),
  agreed: [{ remedy: "trailing-bushes@rear", by: "owner", at: "2026-03-12T10:00:00Z" }],
};
const declined = { ...usualPlan(90_000), declined: ["trailing-bushes@rear"] };

it("an appraisal with a memory gives the answers of one without, whatever was asked before", () => {
  const memory = createMemory();
  for (const plan of [null, agreed, declined, agreed, null]) {
    const fresh = appraiseVisit(record(found, { plan }), solver);
    expect(appraiseVisit(record(found, { plan }), solver, memory)).toEqual(fresh);
  }
});

it("a word of agreement asks the solver nothing anew, a declined remedy does", () => {
  const memory = createMemory();
  const asked = counting();
  appraiseVisit(record(found, { plan: usualPlan(90_000) }), asked.solver, memory);
  const first = asked.calls();
  expect(first).toBeGreaterThan(0);
  appraiseVisit(record(found, { plan: agreed }), asked.solver, memory);
  expect(asked.calls()).toBe(first);
  appraiseVisit(record(found, { plan: declined }), asked.solver, memory);
  expect(asked.calls()).toBeGreaterThan(first);
});

it("a search that was cut short is tried again", () => {
  let calls = 0;
  const cut: ProgrammeSolver = {
    solve: () => {
      calls++;
      return { end: "limit", values: null, bound: null };
    },
  };
  const remembering = createRememberingSolver()(cut);
  const limits = { seconds: 1, gap: 0 };
  remembering.solve("min", [], limits);
  remembering.solve("min", [], limits);
  expect(calls).toBe(2);
});
