import { describe, expect, it } from "vitest";
import { askDoor, formatTravelQuestion, parseFamily } from "#contract";
import { demoFamilySheets } from "#demo";
import { drawHardPoints } from "#drawing";
import type { Family } from "../../src/web/car.ts";
import { drawnPoints } from "../../src/web/editor/drawing/drawn-points.ts";
import { computeTravelEffect, travelsOf } from "../../src/web/editor/drawing/travel-effect.ts";
import { withSheetValue } from "../../src/web/editor/model/sheet-value.ts";

const ouzel = demoFamilySheets["ouzel-saloon"];
const HEIGHT = ["rear", "links", 4, "inner_mm", 2] as const;
const raised = withSheetValue(ouzel, HEIGHT, 283.9);

const familyOf = (sheet: unknown): Family => {
  const parsed = parseFamily(sheet);
  if ("findings" in parsed) throw new Error(JSON.stringify(parsed.findings));
  return parsed.family;
};

/** Change of toe from ride height as the door linkage.travel answers, degrees. */
const toeChange = (sheet: unknown, travel: number): number => {
  const answer = askDoor("linkage.travel", formatTravelQuestion(familyOf(sheet), "rear-left", [0, travel]));
  if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
  const { positions } = answer.output as { readonly positions: readonly { readonly toe_deg: number }[] };
  return (positions[1]?.toe_deg ?? Number.NaN) - (positions[0]?.toe_deg ?? Number.NaN);
};

describe("what a moved hard point does over travel", () => {
  const effect = computeTravelEffect({ kept: familyOf(ouzel), entered: familyOf(raised), axle: "rear" });

  it("is what the door linkage.travel answers, as kept and as entered", () => {
    expect(effect.toe.changes).toHaveLength(2);
    for (const change of effect.toe.changes) {
      expect(change.value).toBeCloseTo(toeChange(raised, change.travel), 9);
      expect(change.kept).toBeCloseTo(toeChange(ouzel, change.travel), 9);
      expect(Math.abs(change.value - (change.kept ?? 0))).toBeGreaterThan(0.05);
    }
  });

  it("turns a rising wheel outward where the inner end of a link ahead of the hub is raised", () => {
    // The steeper the link falls outward, the further its outer end is pushed out as it rises; ahead of the hub that is toe-out.
    const rising = effect.toe.changes.find(({ travel }) => travel > 0);
    expect((rising?.value ?? Number.NaN) - (rising?.kept ?? 0)).toBeLessThan(-0.05);
    const falling = effect.toe.changes.find(({ travel }) => travel < 0);
    expect((falling?.value ?? Number.NaN) - (falling?.kept ?? 0)).toBeGreaterThan(0.05);
  });

  it("runs through ride height, where nothing has changed", () => {
    expect(travelsOf(familyOf(ouzel).rear)).toContain(0);
    const rest = effect.toe.entered.find(([travel]) => travel === 0);
    expect(rest?.[1]).toBeCloseTo(0.14, 9);
  });

  it("is the less sure the looser the points are known, and names the coordinate that does most", () => {
    const loose = withSheetValue(raised, ["rear", "defaults", "sd_mm"], [20, 20, 12]);
    const unsure = computeTravelEffect({ kept: null, entered: familyOf(loose), axle: "rear" });
    expect(unsure.toe.changes[0]?.sd).toBeGreaterThan(10 * (effect.toe.changes[0]?.sd ?? Number.NaN));
    expect(unsure.toe.changes[0]?.kept).toBeNull();
    expect(unsure.toe.changes[0]?.most?.share).toBeGreaterThan(0.05);
  });
});

describe("the drawing of hard points", () => {
  const room = { width: 430, height: 720 };
  const scene = (sheet: unknown) =>
    drawHardPoints(familyOf(sheet), "rear", {
      ...room,
      points: drawnPoints(sheet, ouzel, "rear", "rear.links[4].inner_mm"),
    });
  const pointsOf = (sheet: unknown) => (scene(sheet).points ?? []).filter(({ id }) => id === "rear.links[4].inner_mm");

  it("moves a raised point up in the view from the front, and leaves it where it was from below", () => {
    const [frontBefore, belowBefore] = pointsOf(ouzel);
    const [frontAfter, belowAfter] = pointsOf(raised);
    expect((frontBefore?.y ?? 0) - (frontAfter?.y ?? 0)).toBeGreaterThan(2);
    expect(frontAfter?.x).toBeCloseTo(frontBefore?.x ?? 0, 6);
    expect(belowAfter).toEqual(belowBefore);
  });

  it("joins a moved point to where it was, and only that one", () => {
    const dashed = (sheet: unknown) =>
      scene(sheet).marks.filter((mark) => mark.kind === "circle" && mark.stroke?.dash !== undefined);
    expect([dashed(ouzel).length, dashed(raised).length]).toEqual([0, 2]);
    expect(scene(raised).description).toContain("1 of them moved");
  });

  it.each([430, 820])("keeps every point inside its room at a width of %i", (width) => {
    const { points = [] } = drawHardPoints(familyOf(ouzel), "front", {
      width,
      height: 300,
      points: drawnPoints(ouzel, ouzel, "front", null),
    });
    expect(points.length).toBe(2 * drawnPoints(ouzel, ouzel, "front", null).length);
    expect(points.filter(({ x, y }) => x < 0 || y < 0 || x > width || y > 300)).toEqual([]);
  });
});
