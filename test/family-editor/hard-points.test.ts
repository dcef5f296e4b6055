import { describe, expect, it } from "vitest";
import { checkFamily } from "#contract";
import { demoFamilySheets } from "#demo";
import { withCoordinate } from "../../src/web/editor/model/edit-point.ts";
import { ownSaid, pointRows, withOwnSaid } from "../../src/web/editor/model/hard-points.ts";
import { formatSheetPath } from "../../src/web/editor/model/sheet-path.ts";
import { sheetValueAt, withSheetValue } from "../../src/web/editor/model/sheet-value.ts";

const ouzel = demoFamilySheets["ouzel-saloon"];
const namesOf = (axle: "front" | "rear") => pointRows(ouzel, axle).map(({ name }) => name);

describe("hard points of an axle", () => {
  it("are all there: two ends a link, spring, damper, bar and wheel", () => {
    expect(namesOf("front")).toContain("Upper arm, front leg, inner end");
    expect(namesOf("front")).toHaveLength(1 + 5 * 2 + 2 + 2 + 3);
    expect(new Set(pointRows(ouzel, "rear").map(({ path }) => formatSheetPath(path))).size).toBe(
      namesOf("rear").length,
    );
  });

  it("of a sheet that holds nothing yet are those every axle has", () => {
    expect(pointRows({}, "front").map(({ name }) => name)).toEqual([
      "Wheel, centre",
      "Spring, end on the body",
      "Damper, end on the body",
    ]);
  });

  it("that the legs of an arm share move together, so that the arm stays whole", () => {
    const moved = withCoordinate(ouzel, ["front", "links", 2, "outer_mm"], 2, 187);
    expect([2, 3].map((index) => sheetValueAt(moved, ["front", "links", index, "outer_mm", 2]))).toEqual([187, 187]);
    expect(sheetValueAt(moved, ["front", "links", 0, "outer_mm", 2])).toBe(571);
    expect(checkFamily(moved)).toEqual([]);
  });

  it("that stood apart already move alone, so that both can be put right", () => {
    const apart = withSheetValue(ouzel, ["front", "links", 3, "outer_mm", 0], 9);
    const moved = withCoordinate(apart, ["front", "links", 2, "outer_mm"], 0, 12);
    expect([2, 3].map((index) => sheetValueAt(moved, ["front", "links", index, "outer_mm", 0]))).toEqual([12, 9]);
  });

  it("get an origin of their own and lose it again without a trace", () => {
    const bare = [1, 2, 3];
    const said = withOwnSaid(bare, { origin: "tape" });
    expect(said).toEqual({ at_mm: bare, origin: "tape" });
    const both = withOwnSaid(said, { sd_mm: [5, 5, 1] });
    expect(both).toEqual({ at_mm: bare, sd_mm: [5, 5, 1], origin: "tape" });
    expect(withOwnSaid(withOwnSaid(both, { sd_mm: undefined }), { origin: undefined })).toBe(bare);
    expect(ownSaid({ front: { p: both } }, ["front", "p"])).toEqual({ sd: [5, 5, 1], origin: "tape" });
  });

  it("keep their own words when a coordinate is typed", () => {
    const said = withSheetValue(ouzel, ["rear", "links", 3, "inner_mm"], { at_mm: [-2272, 590, 286], origin: "tape" });
    const moved = withCoordinate(said, ["rear", "links", 3, "inner_mm"], 1, 600);
    expect(sheetValueAt(moved, ["rear", "links", 3, "inner_mm"])).toEqual({ at_mm: [-2272, 600, 286], origin: "tape" });
  });
});
