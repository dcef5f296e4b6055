import { expect, it } from "vitest";
import { splitByWork } from "../../src/casework/cases/split-by-work.ts";
import { usualPlan } from "../../src/casework/cases/usual-plan.ts";
import { look, ouzel, reading } from "./made-visit.ts";

const family = ouzel();
const morning = "2026-03-12T09:00:00Z";
const noon = "2026-03-12T12:00:00Z";
const later = "2026-03-12T13:00:00Z";
const plan = { ...usualPlan(90_000), agreed: [{ remedy: "trailing-bushes@rear", by: "owner", at: noon }] };
const height = (at: string, value: number) => ({
  ...look("rear-left/ride-height", reading("ride-height", value, 0.001)),
  at,
});
const found = height(morning, 0.382);
const torn = {
  ...look("rear-left/trailing-link/inner-bush", { kind: "signs" as const, signs: ["web-torn" as const] }),
  at: morning,
};
const signed = (step: string) => ({
  steps: [{ step, doneBy: "MK", at: noon, hubToArch: null, torqueNm: null, note: null }],
});
const nothing = { past: [], family, visit: {}, jobCard: null, plan: null };

it("before anything is agreed a reading tells how the car came", () => {
  const split = splitByWork({ ...nothing, looks: [found] });
  expect(split.leavesAt("rear-left/ride-height", true)).toBe(false);
  expect(split.left).toEqual([]);
});

it("once something is agreed only what was read before is read as left", () => {
  const split = splitByWork({ ...nothing, looks: [found], plan });
  expect(split.leavesAt("rear-left/ride-height", true)).toBe(true);
  expect(split.leavesAt("rear-right/ride-height", false)).toBe(false);
});

it("after work on the car everything of wheel and axle is read as left, the same figure too", () => {
  const same = height(later, 0.382);
  const split = splitByWork({ ...nothing, looks: [found, same], plan, jobCard: signed("press-trailing-bush") });
  expect(split.leavesAt("rear-right/ride-height", false)).toBe(true);
  expect(split.found).toEqual([found]);
  expect(split.left).toEqual([same]);
});

it("a place of the drawing is read as left where something was found there, elsewhere it is still found", () => {
  const split = splitByWork({ ...nothing, looks: [torn], plan, jobCard: signed("press-trailing-bush") });
  expect(split.leavesAt("rear-left/trailing-link/inner-bush", true)).toBe(true);
  expect(split.leavesAt("rear-right/trailing-link/inner-bush", true)).toBe(false);
});

it("an as-left reading that is taken back tells nothing", () => {
  const left = height(later, 0.38);
  const back = { ...look("rear-left/ride-height", { kind: "withdrawn" as const, look: left.id }), at: later };
  const split = splitByWork({ ...nothing, looks: [found, left, back], plan });
  expect(split.left).toEqual([]);
});
