import { describe, expect, it } from "vitest";
import { formatSheetPath, isAtOrIn, parseSheetPath } from "./sheet-path.ts";
import { isSameValue, sheetValueAt, withEntry, withoutEntry, withSheetValue } from "./sheet-value.ts";
import { formatTyped, typedValue } from "./typed-number.ts";

describe("values of a sheet", () => {
  it("are written along a path, the rest staying the same object", () => {
    const sheet = { front: { links: [{ inner_mm: [1, 2, 3] }] }, rear: { driven: true } };
    const changed = withSheetValue(sheet, ["front", "links", 0, "inner_mm", 1], 5) as typeof sheet;
    expect(changed).toEqual({ front: { links: [{ inner_mm: [1, 5, 3] }] }, rear: { driven: true } });
    expect(changed.rear).toBe(sheet.rear);
    expect(sheet.front.links[0]?.inner_mm).toEqual([1, 2, 3]);
  });

  it("are taken away with their key, and made where nothing was", () => {
    expect(withSheetValue({ a: 1, b: 2 }, ["a"], undefined)).toEqual({ b: 2 });
    expect(withSheetValue({}, ["work", "parts", 0, "id"], "disc")).toEqual({ work: { parts: [{ id: "disc" }] } });
    expect(withSheetValue({ at: [1, 2] }, ["at", 0], undefined)).toEqual({ at: [null, 2] });
  });

  it("of lists come and go at their place", () => {
    const sheet = { work: { parts: ["a", "b", "c"] } };
    expect(withoutEntry(sheet, ["work", "parts"], 1)).toEqual({ work: { parts: ["a", "c"] } });
    expect(withEntry({}, ["life"], {})).toEqual({ life: [{}] });
    expect(withoutEntry({}, ["life"], 0)).toEqual({});
  });

  it("are the same whatever the order of their keys", () => {
    expect(isSameValue({ a: [1, { b: null }], c: 2 }, { c: 2, a: [1, { b: null }] })).toBe(true);
    expect(isSameValue({ a: undefined }, {})).toBe(false);
    expect(isSameValue([1, 2], [1, 2, 3])).toBe(false);
    expect(isSameValue("1", 1)).toBe(false);
  });

  it("are not found beside their path", () => {
    expect(sheetValueAt({ front: [1] }, ["front", "links"])).toBeUndefined();
    expect(sheetValueAt({}, ["toString"])).toBeUndefined();
  });
});

describe("paths", () => {
  it.each(["", "name", "front.links[2].inner_mm[0]", "work.operations[12].fasteners[0].stages[1].torque_nm"])(
    "read back as they were written: %s",
    (text) => expect(formatSheetPath(parseSheetPath(text) ?? ["nothing"])).toBe(text),
  );
  it("that are none are said so", () => expect(parseSheetPath("front..links[x]")).toBeNull());
  it("lie in one another", () => {
    expect(isAtOrIn("front.links[2].name", "front.links[2]")).toBe(true);
    expect(isAtOrIn("front.links[21]", "front.links[2]")).toBe(false);
    expect(isAtOrIn("front.links_extra", "front.links")).toBe(false);
  });
});

describe("typed numbers", () => {
  it.each([
    ["", undefined],
    ["  ", undefined],
    ["12", 12],
    ["-2.50", -2.5],
    ["−2.5", -2.5],
    ["12,5", 12.5],
    ["12.", 12],
    [".5", 0.5],
    ["1,234", "1,234"],
    ["1e3", "1e3"],
    ["-", "-"],
    ["12 mm", "12 mm"],
    ["1.2.3", "1.2.3"],
    ["Infinity", "Infinity"],
  ])("%j is %j", (text, value) => expect(typedValue(text)).toBe(value));

  it.each([
    ["7.4 in", "mm", 187.96],
    ["18,8 cm", "mm", 188],
    ["188 mm", "mm", 188],
    ["-0°30'", "°", -0.5],
    ["1.5 t", "kg", 1500],
    ["12 mm", "N/mm", "12 mm"],
    ["12 furlongs", "mm", "12 furlongs"],
  ])("%j in a field of %s is %j", (text, unit, value) => expect(typedValue(text, {}, unit)).toBe(value));

  it("that may be two are the one that lies in the range", () => {
    expect(typedValue("2,510", { low: 2200, high: 3400 })).toBe(2510);
  });

  it("stand in the field as they are in the sheet", () => {
    expect([formatTyped(12.5), formatTyped(null), formatTyped(undefined), formatTyped("x")]).toEqual([
      "12.5",
      "",
      "",
      "x",
    ]);
  });
});
