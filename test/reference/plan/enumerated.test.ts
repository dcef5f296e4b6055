import { describe, expect, it } from "vitest";
import { checkAnswer } from "./check-answer.ts";
import { enumerate } from "./exact-plan.ts";
import { readExpected, readInstance } from "./instance-record.ts";
import { inventInstance } from "./invent-instance.ts";
import { askPlan } from "./plan-rows.ts";

const seeds = Array.from({ length: 60 }, (_, i) => i + 1);

describe("the planning door against every plan there is", () => {
  it("the enumeration itself gives the reference's optima", () => {
    const optimum = (name: string) => readExpected()[name]?.optimum;
    for (const name of ["o1_tiny_two_visits", "o2_tiny_kit"])
      expect((enumerate(readInstance(name)) ?? 0) / 100).toBe(optimum(name));
    expect(enumerate(readInstance("o8_infeasible_hours"))).toBeNull();
  });

  it("both verdicts turn up among the invented instances", () => {
    const verdicts = seeds.map((seed) => enumerate(inventInstance(seed)) === null);
    expect(verdicts.filter((v) => v).length).toBeGreaterThan(5);
    expect(verdicts.filter((v) => !v).length).toBeGreaterThan(25);
  });

  it.each(seeds)("invented instance %d", { timeout: 30_000 }, (seed) => {
    const instance = inventInstance(seed);
    const best = enumerate(instance);
    const answer = askPlan(instance);
    if (best === null) {
      expect(answer).toMatchObject({ status: "infeasible", cost: null, bound: null, choices: [] });
      return;
    }
    expect(answer).toMatchObject({ status: "optimal", cost: best / 100, bound: best / 100 });
    expect(checkAnswer(instance, answer)).toEqual({ cents: best, wrong: [] });
  });
});
