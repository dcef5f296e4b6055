import { describe, expect, it } from "vitest";
import { closedWords, isWheelOff, openedWords } from "../../src/casework/cases/access-words.ts";
import { appraiseVisit } from "../../src/casework/cases/appraise.ts";
import { usualPlan } from "../../src/casework/cases/usual-plan.ts";
import { look, record, solver, work } from "./made-visit.ts";

const agreed = [{ remedy: "trailing-bushes@rear", by: "owner", at: "2026-03-12" }];
const torn = look("rear-left/trailing-link/inner-bush", { kind: "signs", signs: ["web-torn"] });
const stepsWith = (access: typeof work.access) =>
  appraiseVisit(
    record([torn], {
      plan: { ...usualPlan(90_000), agreed },
      work: {
        ...work,
        access,
        operations: work.operations.map((o) => ({ ...o, access: access.map(({ id }) => id) })),
      },
    }),
    solver,
  ).jobCard.steps;

describe("the order of a job card", () => {
  it("opens each piece once before the work and closes it after what lies between, the wheels before the final torque", () => {
    const steps = stepsWith([
      { id: "caliper", label: "Caliper hung aside", hours: 0.2, scope: "corner" },
      { id: "undertray", label: "Undertray off and on", hours: 0.2, scope: "axle" },
      ...work.access,
    ]);
    expect(steps.map(({ label, place }) => [label.split(":")[0], place])).toEqual([
      ["Note hub-to-arch height at all four corners, tyres on the ground", null],
      ["Lift at the maker's points and rock the car", null],
      ["Wheel off", "rear left"],
      ["Wheel off", "rear right"],
      ["Undertray off", "rear"],
      ["Caliper hung aside", "rear left"],
      ["Caliper hung aside", "rear right"],
      ["Do press-trailing-bush", "rear left"],
      ["Do press-trailing-bush", "rear right"],
      ["Caliper back in its place", "rear right"],
      ["Caliper back in its place", "rear left"],
      ["Wheels on, tightened in a star, finally on the ground", "rear left, rear right"],
      ["Final torque at ride height", "rear left"],
      ["Final torque at ride height", "rear right"],
      // It is in the way of the bolts that get their final torque at ride height.
      ["Undertray on", "rear"],
      ["Settle, measure heights, align", null],
      ["Road test on the same stretch, by somebody else than the fitter where it can be", null],
    ]);
    expect(new Set(steps.map(({ id }) => id)).size).toBe(steps.length);
  });

  it("puts no wheel on where none was off", () => {
    const steps = stepsWith([{ id: "undertray", label: "Undertray off and on", hours: 0.2, scope: "axle" }]);
    expect(steps.filter(({ label }) => /wheels? (on|off)/i.test(label))).toEqual([]);
  });

  it.each([
    ["Rear damper out and in, side trim off", "Rear damper out, side trim off", "Rear damper in"],
    ["Front brake circuit open, bled after", "Front brake circuit open", "Front brake circuit closed and bled"],
    ["Front subframe lowered", "Front subframe lowered", "Front subframe raised again"],
    ["Fluid circuit opened, bled and checked", "Fluid circuit opened", "Fluid circuit closed, bled and checked"],
    ["Bonnet up", "Bonnet up", "Bonnet up: back as it was"],
  ])("writes %s as it is opened and closed", (label, opened, closed) => {
    expect([openedWords(label), closedWords(label), isWheelOff(label)]).toEqual([opened, closed, false]);
  });
});
