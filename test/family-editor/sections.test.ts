import { describe, expect, it } from "vitest";
import { demoFamilySheets } from "#demo";
import { formAt, keysOf } from "../../src/web/editor/model/field-form.ts";
import { pointRows } from "../../src/web/editor/model/hard-points.ts";
import { jointRows } from "../../src/web/editor/model/joints.ts";
import { axleKeysIn, EDITED_ELSEWHERE, placeOf, SECTIONS } from "../../src/web/editor/model/sections.ts";
import { formatSheetPath, isAtOrIn, parseSheetPath, type SheetPath } from "../../src/web/editor/model/sheet-path.ts";
import { isKeyed } from "../../src/web/editor/model/sheet-value.ts";

/** Every place of a sheet that holds something that is no object and no list. */
const leaves = (value: unknown, path: SheetPath = []): readonly SheetPath[] => {
  if (Array.isArray(value)) return value.flatMap((entry, index) => leaves(entry, [...path, index]));
  if (isKeyed(value)) return Object.entries(value).flatMap(([key, entry]) => leaves(entry, [...path, key]));
  return [path];
};

/** True where the section a place leads to shows a field for it. */
const isShown = (sheet: unknown, path: SheetPath): boolean => {
  const { part, section } = placeOf(path);
  const text = formatSheetPath(path);
  if (part === "file") return text === "format";
  if (!SECTIONS[part].some(({ name }) => name === section)) return false;
  if (part === "work" || part === "car") return formAt(keysOf(path.slice(0, 2))) !== undefined;
  const covered = (rows: readonly { readonly path: SheetPath }[]) =>
    rows.some((row) => isAtOrIn(text, formatSheetPath(row.path)));
  if (path[1] === "defaults") return formAt([part, "defaults", String(path[2])]) !== undefined;
  if (section === "points") return covered(pointRows(sheet, part));
  if (section === "rubber") return covered(jointRows(sheet, part));
  const form = formAt([part]);
  const keys = form.kind === "group" ? form.fields.map(({ key }) => key) : [];
  return (
    axleKeysIn(section, keys).includes(String(path[1])) &&
    !keysOf(path.slice(2)).some((key) => EDITED_ELSEWHERE.has(key))
  );
};

describe("sections of the editor", () => {
  it.each(Object.entries(demoFamilySheets))("show every figure and word of %s", (_, sheet) => {
    const places = leaves(sheet);
    expect(places.length).toBeGreaterThan(500);
    expect(places.filter((path) => !isShown(sheet, path)).map(formatSheetPath)).toEqual([]);
  });

  it.each([
    ["front.links[2].inner_mm[0]", "front", "points"],
    ["rear.links[1].outer_joint.axial_n_per_mm", "rear", "rubber"],
    ["front.links", "front", "links"],
    ["front.strut", "front", "links"],
    ["rear.spring.rate_n_per_mm", "rear", "springs"],
    ["rear.spring.seat.moving_mm[2]", "rear", "points"],
    ["front.defaults.torn_share.plan", "front", "rubber"],
    ["rear.layout", "rear", "axle"],
    ["work.operations[3].fasteners[0].stages[1].torque_nm", "work", "operations"],
    ["work.torques", "file", "file"],
    ["life[2].low_km", "car", "life"],
    ["kerb_mass_kg", "car", "identity"],
    ["", "file", "file"],
  ])("a finding at %j leads to %s, %s", (path, part, section) => {
    expect(placeOf(parseSheetPath(path) ?? ["?"])).toEqual({ part, section });
  });
});
