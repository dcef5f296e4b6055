import { describe, expect, it } from "vitest";
import { roundToCents } from "./cents.ts";
import type { Part, PlanInstance } from "./instance.ts";
import { agesIn, computeIntervalCost, computeIntervals } from "./intervals.ts";
import { computeFailureProbability, computeLogSurvival, computeMedianLife } from "./survival.ts";

const bush: Part = {
  id: "bush",
  price: 42.63,
  access: [],
  ageNow: 61_000,
  wear: { life: { family: "weibull", shape: 3.33, scale: 74_159 }, failCost: 247, mostRisk: null, endValueShare: 0.5 },
  maxAge: null,
  mustNow: false,
  conditionOk: false,
};
const link: Part = {
  ...bush,
  id: "link",
  price: 21.71,
  ageNow: 49_800,
  wear: { life: { family: "weibull", shape: 2.54, scale: 62_474 }, failCost: 120, mostRisk: null, endValueShare: 0.5 },
};
const plan: PlanInstance = {
  labourRate: 72,
  horizon: 91_000,
  endDiscount: 0.9288,
  visits: [
    { odometer: 61_000, discount: 1, fixedCost: 0, bayHours: null, budget: null },
    { odometer: 76_000, discount: 0.9637, fixedCost: 45, bayHours: null, budget: null },
  ],
  parts: [bush, link],
  pairs: [],
  operations: [],
  hardware: [],
  kits: [],
  upgrades: [],
  alignment: null,
};

describe("intervals by hand", () => {
  it("the unit now fitted kept to the end: past its median it is worth nothing there", () => {
    // H 0.52180 to 1.97680, F = 0.76660; 0.9288 * 0.76660 * 247 = 175.868.
    expect(agesIn(plan, bush, 0, 3)).toEqual([61_000, 91_000]);
    expect(computeIntervalCost(plan, bush, 0, 3)).toBe(17_587);
  });

  it("a new unit kept to the end: what it is still worth is taken off", () => {
    // F = 0.14373: 16.020 less 0.9288 * 0.5 * 21.71 * (1 - 30000/54079.4) = 4.489.
    expect(computeIntervalCost(plan, link, 1, 3)).toBe(1153);
  });

  it("the interval to now costs nothing; what must be new now has no other", () => {
    expect(computeIntervalCost(plan, bush, 0, 1)).toBe(0);
    const now = computeIntervals(plan, { ...bush, mustNow: true }).filter((i) => i.from === 0);
    expect(now.map((i) => i.to)).toEqual([1]);
  });

  it("limits on age and risk hold exactly at the limit", () => {
    const risk = computeFailureProbability({ family: "weibull", shape: 3.33, scale: 74_159 }, 61_000, 76_000);
    const limited = (mostRisk: number): Part => ({ ...bush, wear: bush.wear && { ...bush.wear, mostRisk } });
    expect(computeIntervalCost(plan, limited(risk), 0, 2)).not.toBeNull();
    expect(computeIntervalCost(plan, limited(risk - 1e-9), 0, 2)).toBeNull();
    expect(computeIntervalCost(plan, { ...bush, maxAge: 76_000 }, 0, 2)).not.toBeNull();
    expect(computeIntervalCost(plan, { ...bush, maxAge: 75_999 }, 0, 2)).toBeNull();
  });

  it("a part without a life costs nothing to keep", () => {
    expect(computeIntervals(plan, { ...bush, wear: null }).every((i) => i.cost === 0)).toBe(true);
  });
});

describe("survival", () => {
  it("lognormal: half at the median, and 0.8413 one sigma before it", () => {
    const life = { family: "lognormal", median: 60_000, sigma: 0.4 } as const;
    expect(Math.exp(computeLogSurvival(life, 60_000))).toBeCloseTo(0.5, 15);
    expect(Math.exp(computeLogSurvival(life, 60_000 * Math.exp(-0.4)))).toBeCloseTo(0.8413447460685429, 14);
    expect(computeMedianLife(life)).toBe(60_000);
  });

  it("far beyond its life a unit still has a chance of failing next, not NaN", () => {
    const life = { family: "lognormal", median: 1000, sigma: 0.05 } as const;
    for (const age of [4000, 2000 * Math.exp(0.4), 60_000]) {
      const p = computeFailureProbability(life, age, age * 1.01);
      expect(p).toBeGreaterThan(0.5);
      expect(p).toBeLessThanOrEqual(1);
    }
    // The two ways to the logarithm of a survival meet: the slope is the same on both sides.
    const at = (z: number) => computeLogSurvival(life, 1000 * Math.exp(0.05 * Math.SQRT2 * z));
    expect(at(20.001) - at(20)).toBeCloseTo(at(20) - at(19.999), 4);
  });

  it("Weibull: half at its median", () => {
    const life = { family: "weibull", shape: 2.54, scale: 62_474 } as const;
    expect(Math.exp(computeLogSurvival(life, computeMedianLife(life)))).toBeCloseTo(0.5, 14);
  });
});

describe("cents", () => {
  it.each([
    [0.9357 * 150, 14_036],
    [1.005, 101],
    [-1.005, -101],
    [0.0049, 0],
    [-0.004, 0],
  ])("%d is %d", (amount, cents) => {
    expect(roundToCents(amount)).toBe(cents);
  });
});
