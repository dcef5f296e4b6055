import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { computeFaultEffect } from "#casework";
import { editSheet } from "../../../test/family-sheets/edit-sheet.ts";
import { checkFamily, parseFamilyText } from "./index.ts";

const guide = readFileSync(new URL("../../../docs/family-sheet.md", import.meta.url), "utf8");
const [, example = ""] = /```json\n([\s\S]*?)```/.exec(guide) ?? [];

describe("the sheet in the guide", () => {
  const parsed = parseFamilyText(example);
  if ("findings" in parsed) throw new Error(JSON.stringify(parsed.findings, null, 2));
  const { family } = parsed;

  it("is complete: what it leaves out is filled in, and a torn bush can be computed", () => {
    expect(family.front.links.map(({ label, sheet }) => `${label}: ${sheet}`)).toEqual([
      "Lower arm front: lower",
      "Lower arm rear: lower",
      "Tie rod: lower",
    ]);
    expect(family.rear.wheel.rimOffset).toBe(0.045);
    expect(
      family.rear.wheel.centre[2] - family.rear.wheel.loadedRadius * Math.cos(family.rear.wheel.camber),
    ).toBeCloseTo(0, 9);
    expect(family.front.links[1]?.innerJoint.tornShare?.[3]).toEqual({ low: 0.15, high: 0.4, origin: "guess" });
    const answer = computeFaultEffect(family, {
      corner: "front-left",
      position: "front-left/lower-arm/rear-bush",
      fault: { kind: "torn", grade: 3 },
      condition: { contactRise: 0, rack: 0, braking: 2000, lateral: 0, drive: 0 },
    });
    expect(answer).toHaveProperty("effect");
  });

  it("is the shortest: whatever else is left out is missed", () => {
    const sheet: unknown = JSON.parse(example);
    for (const key of [
      "front.wheel",
      "front.strut",
      "front.spring",
      "rear.damper",
      "rear.brake",
      "rear.driven",
      "kerb_mass_kg",
      "rear.links[0].inner_mm",
    ]) {
      expect(checkFamily(editSheet(sheet, [{ remove: key }]))).not.toEqual([]);
    }
  });
});
