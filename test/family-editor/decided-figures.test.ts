import { describe, expect, it } from "vitest";
import { rankCoordinates } from "#casework";
import { askDoor, formatTravelQuestion, parseFamily } from "#contract";
import { demoFamilySheets } from "#demo";
import type { Family } from "../../src/web/car.ts";
import { computeTravelEffect } from "../../src/web/editor/drawing/travel-effect.ts";
import { pathOfCoordinate, pointRows } from "../../src/web/editor/model/hard-points.ts";
import { formatSheetPath, isAtOrIn } from "../../src/web/editor/model/sheet-path.ts";
import { sheetValueAt, withSheetValue } from "../../src/web/editor/model/sheet-value.ts";

const familyOf = (sheet: unknown): Family => {
  const parsed = parseFamily(sheet);
  if ("findings" in parsed) throw new Error(JSON.stringify(parsed.findings));
  return parsed.family;
};
const SD = ["rear", "defaults", "sd_mm"] as const;
const loose = withSheetValue(demoFamilySheets["ouzel-saloon"], SD, [20, 20, 12]);
const tight = withSheetValue(loose, SD, [2, 2, 1]);

describe("what the figures of an axle hang on", () => {
  const ranked = rankCoordinates(familyOf(loose), "rear");

  it("is ranked as the door linkage.band answers for the same deviations", () => {
    const { steps: _, ...corner } = formatTravelQuestion(familyOf(loose), "rear-left", []);
    const answer = askDoor("linkage.band", { ...corner, sd_mm: { x: 20, y: 20, z: 12 }, travels_mm: [50] });
    if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
    const { positions } = answer.output as {
      readonly positions: readonly {
        readonly toe_change_deg: number;
        readonly toe_change_sd_deg: number;
        readonly top: { readonly toe_change: readonly { readonly share: number; readonly axis: string }[] };
      }[];
    };
    const own = ranked.find(({ key }) => key === "toe-bump");
    const [at] = positions;
    expect(own?.value).toBeCloseTo(at?.toe_change_deg ?? Number.NaN, 9);
    expect(own?.sd).toBeCloseTo(at?.toe_change_sd_deg ?? Number.NaN, 9);
    const top = at?.top.toe_change ?? [];
    expect(top.length).toBeGreaterThan(2);
    top.slice(0, 5).forEach(({ share, axis }, i) => {
      expect(own?.coordinates[i]?.share).toBeCloseTo(share, 9);
      expect("xyz"[own?.coordinates[i]?.axis ?? 3]).toBe(axis);
    });
  });

  it("names coordinates that stand in a field, largest share first, and says what a millimetre of each does", () => {
    for (const { key, value, coordinates } of ranked) {
      expect(coordinates.length).toBeGreaterThan(2);
      expect(coordinates.map(({ share }) => share)).toEqual(
        coordinates.map(({ share }) => share).toSorted((a, b) => b - a),
      );
      for (const { point, axis, perMm } of coordinates.slice(0, 2)) {
        const path = pathOfCoordinate(loose, "rear", point, axis);
        if (path === null) throw new Error(`no field for ${point}`);
        expect(pointRows(loose, "rear").some((row) => isAtOrIn(formatSheetPath(path), formatSheetPath(row.path)))).toBe(
          true,
        );
        const moved = withSheetValue(loose, path, Number(sheetValueAt(loose, path)) + 0.01);
        const then = rankCoordinates(familyOf(moved), "rear").find((figure) => figure.key === key);
        expect(((then?.value ?? Number.NaN) - value) / 0.01 / perMm).toBeCloseTo(1, 2);
      }
    }
  });

  it("says which have become printable by what was entered, and what would settle those that have not", () => {
    const { figures } = computeTravelEffect({ kept: familyOf(loose), entered: familyOf(tight), axle: "rear" });
    const become = figures.filter(({ printable, wasPrintable }) => printable && wasPrintable === false);
    expect(become.length).toBeGreaterThan(0);
    expect(ranked.filter(({ printable }) => !printable).every(({ settle }) => settle !== null && settle !== "")).toBe(
      true,
    );
    expect(figures.every(({ printable, settle }) => printable === (settle === null))).toBe(true);
    const alone = computeTravelEffect({ kept: null, entered: familyOf(tight), axle: "rear" });
    expect(alone.figures.every(({ wasPrintable }) => wasPrintable === null)).toBe(true);
  });
});
