import { describe, expect, it } from "vitest";
import { checkAnswer } from "./check-answer.ts";
import { readExpected, readInstance } from "./instance-record.ts";
import { askPlan, refusePlan } from "./plan-rows.ts";

type Loose = Record<string, unknown>;
/** A copy of an instance that may be changed anywhere. */
const loose = (name: string): Loose & Record<string, Loose[]> => structuredClone(readInstance(name)) as never;
const places = (instance: unknown) =>
  refusePlan(instance)
    .map((f) => `${f.code} ${f.path}`)
    .sort();

describe("what the planning door refuses", () => {
  it("says everything at once, each at the innermost place", () => {
    const plan = loose("o4_tiny_upgrade");
    const [first, second] = plan.parts as [Loose, Loose];
    first.price = -3;
    first.access = [["NO_SUCH"], []];
    second.id = first.id;
    second.life = { family: "weibull", shape: 2 };
    (plan.visits as [Loose, Loose])[1].miles = 10;
    (plan.operations as [Loose])[0].hours = "0.2";
    (plan.operations as [Loose, Loose])[1].needs = ["LIFT", "LIFT", "LFT"];
    plan.colour = ["red"] as never;
    (plan.upgrades as [Loose])[0].required_by = 9;
    plan.horizon_miles = Number.NaN as never;
    expect(places(plan)).toEqual(
      [
        "out-of-range parts[0].price",
        "unknown-name parts[0].access[0][0]",
        "wrong-length parts[0].access[1]",
        "repeated-name parts[1].id",
        "missing-key parts[1].life.scale",
        "not-consistent visits[1].miles",
        "wrong-type operations[0].hours",
        "repeated-name operations[1].needs[1]",
        "unknown-name operations[1].needs[2]",
        "unknown-key colour",
        "out-of-range upgrades[0].required_by",
        "not-a-number horizon_miles",
        // What named the second part by the name it had.
        "unknown-name upgrades[0].requires[1]",
        "unknown-name kits[0].contents[1]",
        "unknown-name alignment.if_parts[1]",
      ].sort(),
    );
  });

  it.each([
    [
      "a horizon before the last visit",
      (p: Loose) => void Object.assign(p, { horizon_miles: 1 }),
      "not-consistent horizon_miles",
    ],
    [
      "a life without what a failure costs",
      (p: Loose) => void delete (p.parts as Loose[])[0]?.fail_cost,
      "missing-key parts[0].fail_cost",
    ],
    [
      "a visit numbered out of place",
      (p: Loose) => void Object.assign((p.visits as Loose[])[1] as Loose, { t: 1 }),
      "not-consistent visits[1].t",
    ],
    ["no visit", (p: Loose) => void Object.assign(p, { visits: [] }), "wrong-length visits"],
    [
      "a kit of what is no part",
      (p: Loose) => void Object.assign((p.kits as Loose[])[0] as Loose, { contents: ["LIFT"] }),
      "unknown-name kits[0].contents[0]",
    ],
    [
      "an alignment by what is no operation",
      (p: Loose) => void Object.assign(p.alignment as Loose, { op: "lowbush_FL" }),
      "unknown-name alignment.op",
    ],
  ])("%s", (_, change, place) => {
    const plan = loose("o1_tiny_two_visits");
    change(plan);
    expect(places(plan)).toEqual([place]);
  });

  it("names the nearest where a name is misspelt", () => {
    const plan = loose("o1_tiny_two_visits");
    Object.assign((plan.parts as [Loose])[0], { access: [["PRS_FLL"]] });
    expect(refusePlan(plan)[0]).toMatchObject({ got: '"PRS_FLL"', hint: "The nearest is PRS_FL." });
  });
});

describe("optional parts of an instance", () => {
  it("absent, null and empty say the same", () => {
    const plan = loose("o3_tiny_strut_access");
    const costs = [[], undefined, null].map(
      (value) => askPlan({ ...plan, pairs: value, kits: value, upgrades: value }).cost,
    );
    expect(new Set(costs).size).toBe(1);
    const { pairs, kits, upgrades, ...without } = plan;
    expect([pairs, kits, upgrades].every(Array.isArray)).toBe(true);
    expect(askPlan(without).cost).toBe(costs[0]);
  });

  it("a plan with nothing to renew costs nothing", () => {
    const empty = {
      labour_rate: 70,
      horizon_miles: 20,
      end_discount: 1,
      visits: [{ miles: 10, discount: 1, fixed_cost: 5 }],
      parts: [],
      operations: [],
    };
    expect(askPlan(empty)).toEqual({ status: "optimal", cost: 0, bound: 0, choices: [] });
  });
});

describe("why there is no plan", () => {
  it("names the visit whose hours are too few, and how many would do", () => {
    const answer = askPlan(readInstance("o8_infeasible_hours"));
    const [blocked, ...others] = answer.blocked_by as Loose[];
    expect(others).toEqual([]);
    expect(blocked).toMatchObject({ by: "bay_hours", visit: 1 });
    const plan = loose("o8_infeasible_hours");
    const visit = (plan.visits as [Loose])[0];
    expect(blocked?.limit).toBe(visit.bay_hours);
    const least = blocked?.least as number;
    visit.bay_hours = least;
    expect(askPlan(plan).status).toBe("optimal");
    visit.bay_hours = least - 0.01;
    expect(askPlan(plan).status).toBe("infeasible");
  });

  it("names a part no sequence of units can keep", () => {
    const plan = loose("o1_tiny_two_visits");
    Object.assign((plan.parts as Loose[])[2] as Loose, { max_age: 1000 });
    expect(askPlan(plan).blocked_by).toEqual([{ by: "part", visit: null, part: "link_FL", limit: null, least: null }]);
  });

  it("names the budget where money is what is short", () => {
    const plan = loose("o1_tiny_two_visits");
    Object.assign((plan.parts as [Loose])[0], { must_now: true });
    Object.assign((plan.visits as [Loose])[0], { budget: 100 });
    const [blocked] = askPlan(plan).blocked_by as Loose[];
    expect(blocked).toMatchObject({ by: "budget", visit: 1, limit: 100 });
    // LIFT 0.2, WHL 0.15, BJ 0.5, ARM 0.9, PRS 0.4, ALIGN 0.9 h at 72; hardware 17.51 + 4.59; the bush 42.63.
    expect(blocked?.least).toBeCloseTo(3.05 * 72 + 17.51 + 4.59 + 42.63, 9);
  });

  it("says that the rules contradict each other where no limit is to blame", () => {
    // The pair must be new now; the second part fails early in life, so that only its present unit keeps its risk.
    const plan = loose("o1_tiny_two_visits");
    const [first, second] = plan.parts as [Loose, Loose];
    first.must_now = true;
    Object.assign(second, { p_max: 0.2, life: { family: "weibull", shape: 0.1, scale: 1000 } });
    expect(askPlan(plan).status).toBe("optimal");
    plan.pairs = [[first.id, second.id]] as never;
    expect(askPlan(plan).blocked_by).toEqual([{ by: "rules", visit: null, part: null, limit: null, least: null }]);
  });
});

describe("when the time runs out", () => {
  it("gives what is known: a plan that keeps its rules or none, and a bound below the optimum", {
    timeout: 60_000,
  }, () => {
    const instance = readInstance("o7_large_whole_car");
    const optimum = readExpected().o7_large_whole_car?.optimum ?? 0;
    const answer = askPlan({ ...instance, time_limit_s: 0.5 });
    expect(answer.status).toBe("limit");
    if (answer.bound !== null) expect(answer.bound).toBeLessThanOrEqual(optimum + 0.001);
    if (answer.cost === null) expect(answer.choices).toEqual([]);
    else {
      expect(answer.cost).toBeGreaterThanOrEqual(optimum - 0.001);
      expect(checkAnswer(instance, answer)).toEqual({ cents: Math.round(answer.cost * 100), wrong: [] });
    }
  });
});
