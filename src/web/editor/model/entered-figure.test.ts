import { expect, test } from "vitest";
import { formatFamily, parseSilhouette } from "#contract";
import { beginDraft, editDraft } from "./draft.ts";
import { withCoordinate } from "./edit-point.ts";
import { HOLDERS } from "./entered-figure.ts";
import { sheetValueAt } from "./sheet-value.ts";

const sheetOf = () => {
  const made = parseSilhouette({ name: "Pipit" });
  if ("findings" in made) throw new Error("refused");
  return formatFamily(made.family);
};
const assumedIn = (sheet: unknown): unknown => sheetValueAt(sheet, ["assumed"]);

test("every figure that can be assumed stands under a key that exists", () => {
  const sheet = sheetOf();
  expect(Object.keys(HOLDERS).toSorted()).toEqual([...(sheet.assumed ?? [])].toSorted());
  for (const keys of Object.values(HOLDERS))
    for (const key of keys) expect(sheetValueAt(sheet, key.split(".")), key).toBeDefined();
});

test("a figure that is typed is no longer assumed; the others still are", () => {
  const draft = beginDraft({ text: "", sheet: sheetOf(), version: null });
  const edited = editDraft(draft, ["kerb_mass_kg"], 1450).sheet;
  expect(assumedIn(edited)).not.toContain("kerb-mass");
  expect(assumedIn(edited)).toContain("front-track");
  const wheel = editDraft(draft, ["rear", "wheel", "toe_deg"], 0.1).sheet;
  expect(assumedIn(wheel)).not.toContain("rear-set-angles");
  expect(assumedIn(wheel)).toContain("front-set-angles");
});

test("moving the wheel centre enters the height, moving a link enters nothing", () => {
  const sheet = sheetOf();
  expect(assumedIn(withCoordinate(sheet, ["front", "wheel", "centre_mm"], 2, 301))).not.toContain("front-height");
  expect(assumedIn(withCoordinate(sheet, ["front", "links", 0, "inner_mm"], 2, 301))).toEqual(sheet.assumed);
});
