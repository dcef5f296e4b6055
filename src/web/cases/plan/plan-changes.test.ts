import { describe, expect, it } from "vitest";
import type { PlanDocument } from "#casework";
import { agreeTo, decline, fixTo, leaveOpen } from "./plan-changes.ts";

const plan: PlanDocument = {
  visits: [{ label: "Now", odometerKm: 90_000 }],
  declined: ["pads@front"],
  agreed: [{ remedy: "discs@front", by: "owner", at: "2031-05-14T09:00:00Z" }],
  fixed: [{ remedy: "discs@front", visit: 0 }],
  horizonKm: 130_000,
};

describe("what the owner says to a remedy", () => {
  it("is one of agreed, declined and open, never two", () => {
    const agreed = agreeTo(plan, "pads@front", "owner", "2031-05-14T10:00:00Z");
    expect(agreed.declined).toEqual([]);
    expect(agreed.agreed.map((a) => a.remedy)).toEqual(["discs@front", "pads@front"]);
    const declined = decline(agreed, "discs@front");
    expect(declined.declined).toEqual(["discs@front"]);
    expect(declined.agreed.map((a) => a.remedy)).toEqual(["pads@front"]);
    expect(leaveOpen(declined, "discs@front").declined).toEqual([]);
  });

  it("said twice stands once", () => {
    expect(decline(decline(plan, "pads@front"), "pads@front").declined).toEqual(["pads@front"]);
    const twice = agreeTo(agreeTo(plan, "a@rear", "x", "t"), "a@rear", "y", "t");
    expect(twice.agreed.filter((a) => a.remedy === "a@rear")).toEqual([{ remedy: "a@rear", by: "y", at: "t" }]);
  });

  it("fixes to one visit and lets go again", () => {
    expect(fixTo(plan, "discs@front", 2).fixed).toEqual([{ remedy: "discs@front", visit: 2 }]);
    expect(fixTo(plan, "discs@front", null).fixed).toEqual([]);
  });
});
