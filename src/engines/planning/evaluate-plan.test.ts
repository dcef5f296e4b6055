import { describe, expect, it } from "vitest";
import { evaluatePlan, formatBrokenRule } from "./evaluate-plan.ts";
import type { Part, PlanInstance, VisitChoice } from "./instance.ts";
import { trimChoice } from "./trim-choice.ts";

const part = (id: string, access: string[][]): Part => ({
  id,
  price: 20,
  access,
  ageNow: 50_000,
  wear: null,
  maxAge: null,
  mustNow: false,
  conditionOk: false,
});
const plan: PlanInstance = {
  labourRate: 100,
  horizon: 90_000,
  endDiscount: 0.9,
  visits: [
    { odometer: 60_000, discount: 1, fixedCost: 0, bayHours: 2, budget: 320 },
    { odometer: 75_000, discount: 0.95, fixedCost: 30, bayHours: null, budget: null },
  ],
  parts: [
    { ...part("bush", [["press"]]), maxAge: 64_000 },
    part("link", [["shake"], ["press", "shake"]]),
    part("mount", []),
  ],
  pairs: [["link", "mount"]],
  operations: [
    { id: "lift", hours: 0.2, needs: [], disturbs: [] },
    { id: "press", hours: 1, needs: ["lift"], disturbs: ["bolt"] },
    { id: "shake", hours: 0.5, needs: ["lift"], disturbs: ["bolt"] },
    { id: "align", hours: 0.8, needs: ["lift"], disturbs: [] },
  ],
  hardware: [{ id: "bolt", price: 5 }],
  kits: [{ id: "set", contents: ["bush", "link"], price: 30 }],
  upgrades: [{ id: "firmer", price: 80, access: [["press"]], requires: ["bush"], requiredBy: 2, benefitPer1000: 2 }],
  alignment: { operation: "align", ifParts: ["bush"], ifOperations: ["press"] },
};
const visit = (n: number, replace: string[], operations: string[], kits: string[] = []): VisitChoice => ({
  visit: n,
  replace,
  operations,
  kits,
});
const full = ["lift", "press", "align"];
const brokenBy = (...choices: VisitChoice[]): string[] => evaluatePlan(plan, choices).broken.map(formatBrokenRule);

describe("a plan that was made by hand", () => {
  it("keeps every rule and adds up", () => {
    const later = visit(2, ["firmer"], full);
    const { cost, visits, broken } = evaluatePlan(plan, [later, visit(1, ["bush"], full)]);
    expect(broken).toEqual([]);
    // Visit 1: 2.0 h 200.00, bolt 5.00, bush 20.00. Visit 2 by 0.95: fixed 28.50, 190.00, 4.75, firmer 76.00 less 2 x 15.
    expect(visits[0]).toMatchObject({ visit: 1, hours: 2, spend: 225 });
    expect(cost).toBe(22_500 + 2850 + 19_000 + 475 + 7600 - 3000);
  });

  it.each<[string, VisitChoice[], string[]]>([
    [
      "a firmer part before the sound one",
      [visit(1, ["firmer"], full), visit(2, ["bush"], full)],
      ["visit 2: bush: the unit now fitted may not stay that long", "visit 1: firmer: bush must be renewed first"],
    ],
    [
      "a part nothing gives access to",
      [visit(1, ["bush"], ["lift", "align"]), visit(2, ["firmer"], full)],
      ["visit 1: bush: it is reached by press, which the visit does not do"],
    ],
    [
      "an operation without what it needs",
      [visit(1, ["bush"], ["press", "align"]), visit(2, ["firmer"], full)],
      [
        "visit 1: press: it needs lift, which the visit does not do",
        "visit 1: align: it needs lift, which the visit does not do",
      ],
    ],
    [
      "no alignment after it",
      [visit(1, ["bush"], ["lift", "press"]), visit(2, ["firmer"], full)],
      ["visit 1: align: bush asks for it"],
    ],
    [
      "a unit that stays too long",
      [visit(2, ["bush", "firmer"], full)],
      ["visit 2: bush: the unit now fitted may not stay that long"],
    ],
    [
      "half a pair",
      [visit(1, ["bush"], full), visit(2, ["firmer", "mount"], full)],
      ["mount: it is renewed together with link"],
    ],
    ["an upgrade left out", [visit(1, ["bush"], full)], ["visit 2: firmer: it must be fitted by visit 2"]],
    [
      "an upgrade fitted twice",
      [visit(1, ["bush", "firmer"], full), visit(2, ["firmer"], full)],
      ["visit 2: firmer: it is fitted once at most"],
    ],
  ])("says of %s why not", (_, choices, reasons) => {
    expect(brokenBy(...choices)).toEqual(reasons);
  });

  it("says by how much a visit is over its limits", () => {
    const over = brokenBy(visit(1, ["bush", "firmer"], [...full, "shake"]));
    expect(over).toEqual([
      "visit 1: bay-hours: 2.5 where at most 2 is allowed",
      "visit 1: budget: 355 where at most 320 is allowed",
    ]);
  });

  it("a visit at which nothing is done costs nothing", () => {
    const one = [visit(1, ["bush", "firmer"], full)];
    expect(evaluatePlan(plan, [...one, visit(2, [], [])]).cost).toBe(evaluatePlan(plan, one).cost);
  });
});

describe("trimming a visit", () => {
  it("leaves out operations and kits it does not need, and keeps what gives access", () => {
    const trimmed = trimChoice(plan, visit(2, ["link", "mount"], ["lift", "press", "shake", "align"], ["set"]));
    expect(trimmed).toEqual(visit(2, ["link", "mount"], ["lift", "shake"], ["set"]));
    expect(trimChoice(plan, visit(2, ["mount"], ["lift"], ["set"]))).toEqual(visit(2, ["mount"], [], []));
  });
});
