import { describe, expect, it } from "vitest";
import type { PlanDocument } from "#casework";
import { addVisit, moveVisit, removeVisit, renameVisit, withVisitsOf } from "./visit-changes.ts";

const plan: PlanDocument = {
  visits: [
    { label: "Now", odometerKm: 90_000 },
    { label: "Next service", odometerKm: 100_000 },
    { label: "Second service", odometerKm: 110_000 },
  ],
  declined: ["pads@front"],
  agreed: [],
  fixed: [
    { remedy: "a@rear", visit: 1 },
    { remedy: "b@rear", visit: 2 },
  ],
  horizonKm: 115_000,
};

describe("the visits of a plan", () => {
  it("change their name and place one by one", () => {
    expect(renameVisit(plan, 1, "Spring").visits[1]).toEqual({ label: "Spring", odometerKm: 100_000 });
    expect(moveVisit(plan, 1, 104_000).visits.map((v) => v.odometerKm)).toEqual([90_000, 104_000, 110_000]);
    expect(moveVisit(plan, 1, 104_000).horizonKm).toBe(115_000);
  });

  it("carry the horizon with them where the last goes beyond it", () => {
    expect(moveVisit(plan, 2, 130_000).horizonKm).toBe(130_000);
    const longer = addVisit(plan);
    expect(longer.visits.at(-1)).toEqual({ label: "Visit 4", odometerKm: 120_000 });
    expect(longer.horizonKm).toBe(125_000);
  });

  it("take what is set to them by hand along, and let go of it when they go", () => {
    const shorter = removeVisit(plan, 1);
    expect(shorter.visits.map((v) => v.label)).toEqual(["Now", "Second service"]);
    expect(shorter.fixed).toEqual([{ remedy: "b@rear", visit: 1 }]);
  });

  it("come back as they were, what the owner said meanwhile kept", () => {
    const back = withVisitsOf({ ...removeVisit(plan, 1), declined: [] }, plan);
    expect(back.visits).toEqual(plan.visits);
    expect(back.fixed).toEqual(plan.fixed);
    expect(back.declined).toEqual([]);
  });
});
