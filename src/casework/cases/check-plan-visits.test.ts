import { describe, expect, it } from "vitest";
import { checkPlanVisits, oddityWords, planFromNow } from "./check-plan-visits.ts";
import type { PlanDocument } from "./documents.ts";

const plan: PlanDocument = {
  visits: [
    { label: "Now", odometerKm: 90_000 },
    { label: "Next service", odometerKm: 105_000 },
    { label: "Second service", odometerKm: 120_000 },
  ],
  declined: [],
  agreed: [],
  fixed: [{ remedy: "pads@front", visit: 2 }],
  horizonKm: 127_500,
};
const moved = (i: number, odometerKm: number): PlanDocument => ({
  ...plan,
  visits: plan.visits.map((v, n) => (n === i ? { ...v, odometerKm } : v)),
});
const codes = (of: PlanDocument, carKm: number | null = 90_000) => checkPlanVisits(of, carKm).map((o) => o.code);

describe("the visits of a plan", () => {
  it("are nothing odd where they rise from what the car shows to the horizon", () => {
    expect(checkPlanVisits(plan, 90_000)).toEqual([]);
  });

  it("are said with where, what came and what was needed", () => {
    expect(checkPlanVisits(moved(1, 85_000), 90_000).map(oddityWords)).toEqual([
      "Next service, odometer: 85\u00a0000 km; needed is at least 90\u00a0000 km, what the car shows.",
    ]);
    expect(checkPlanVisits(moved(2, 100_000), 90_000).map(oddityWords)).toEqual([
      "Second service, odometer: 100\u00a0000 km; needed is more than 105\u00a0000 km of the visit before, Next service.",
    ]);
  });

  it("stand apart, end before the horizon, and hold what is set to them", () => {
    expect(codes(moved(2, 105_000))).toEqual(["plan-order"]);
    expect(codes({ ...plan, horizonKm: 119_999 })).toEqual(["plan-horizon"]);
    expect(codes({ ...plan, visits: plan.visits.slice(0, 2) })).toEqual(["plan-fixed-visit"]);
    expect(codes({ ...plan, visits: [] })).toEqual([]);
  });

  it("are not held against an odometer nobody has read", () => {
    expect(codes(moved(0, 10), null)).toEqual([]);
  });
});

describe("a saved plan", () => {
  it("begins where the car stands today", () => {
    expect(planFromNow(plan, 91_000).visits.map((v) => v.odometerKm)).toEqual([91_000, 105_000, 120_000]);
    expect(planFromNow(plan, null)).toBe(plan);
  });

  it("moves along with an odometer that was put right, so that no visit lies behind the car", () => {
    const moved = planFromNow(plan, 110_000);
    expect(moved.visits.map((v) => v.odometerKm)).toEqual([110_000, 125_000, 140_000]);
    expect(moved.horizonKm).toBe(147_500);
    expect(checkPlanVisits(moved, 110_000)).toEqual([]);
  });
});
