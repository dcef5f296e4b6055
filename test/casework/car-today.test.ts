import { describe, expect, it } from "vitest";
import { computeCarToday } from "../../src/casework/cases/car-today.ts";
import type { Stage, VisitDocument, Wait } from "../../src/casework/cases/documents.ts";
import { usualPlan } from "../../src/casework/cases/usual-plan.ts";
import { record } from "./made-visit.ts";

const visit = (change: Partial<VisitDocument>): VisitDocument => ({ ...record([]).visit, ...change });
const wait = (what: Wait["what"]): Wait => ({ what, label: "x", since: "2026-03-10", due: null });
const upTo: readonly Stage[] = ["enquiry", "car", "readings"];

describe("when a car is due again", () => {
  it("is the next visit of its plan, past the odometer", () => {
    expect(computeCarToday(visit({ odometerKm: 90_000 }), usualPlan(90_000)).dueAgain).toMatchObject({
      km: 105_000,
      from: "plan",
    });
    expect(computeCarToday(visit({ odometerKm: 106_000 }), usualPlan(90_000)).dueAgain?.km).toBe(120_000);
  });

  it("is the end of the plan where no visit is ahead, and says so", () => {
    const plan = { ...usualPlan(90_000), visits: [{ label: "Now", odometerKm: 90_000 }] };
    const due = computeCarToday(visit({ odometerKm: 90_000 }), plan).dueAgain;
    expect(due).toMatchObject({ km: 127_500, from: "horizon" });
    expect(due?.words).toContain("where its plan ends");
  });

  it("is an interval from memory without a plan, marked so, and nothing without an odometer", () => {
    const due = computeCarToday(visit({ odometerKm: 90_000 }), null).dueAgain;
    expect(due).toMatchObject({ km: 105_000, from: "practice" });
    expect(due?.words).toContain("from memory");
    expect(computeCarToday(visit({ odometerKm: null }), null).dueAgain).toBeNull();
  });
});

describe("what can go on meanwhile", () => {
  const meanwhile = (waits: readonly Wait[], done = upTo, plan = usualPlan(90_000)) =>
    computeCarToday(visit({ waits, done }), plan).meanwhile;

  it("is everything where nothing is waited for", () => {
    expect(meanwhile([])).toMatchObject({ held: [], words: "Waits for nothing: Underside goes on." });
  });

  it("is looking and planning while a part is under way, looking alone while the owner thinks", () => {
    expect(meanwhile([wait("part")])).toMatchObject({
      goesOn: ["underside", "findings", "plan"],
      held: ["job-card", "hand-over"],
    });
    expect(meanwhile([wait("owner")]).goesOn).toEqual(["underside", "findings"]);
    expect(meanwhile([wait("stand")]).goesOn).toEqual(["findings", "plan"]);
    expect(meanwhile([wait("person")])).toMatchObject({ goesOn: ["findings", "plan"], held: ["underside"] });
    expect(meanwhile([wait("part"), wait("owner")]).goesOn).toEqual(["underside", "findings"]);
  });

  it("is what was agreed to while the owner thinks about the rest", () => {
    const agreed = { ...usualPlan(90_000), agreed: [{ remedy: "a", by: "owner", at: "2026-03-12" }] };
    const done: readonly Stage[] = [...upTo, "underside", "findings"];
    expect(meanwhile([wait("owner")], done, agreed).goesOn).toEqual(["job-card"]);
    expect(meanwhile([wait("owner")], done).words).toBe("Nothing can go on until then.");
  });

  it("is nothing once the car has gone", () => {
    expect(computeCarToday(visit({ closed: true }), null).meanwhile.words).toBe("Nothing is left to do.");
  });
});
