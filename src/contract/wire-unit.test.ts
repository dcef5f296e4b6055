import { describe, expect, it } from "vitest";
import { computeEditDistance } from "#numeric";
import { findNearest } from "./edit-distance.ts";
import { formatConversion, splitUnit, type WireUnit, wireUnits } from "./wire-unit.ts";

const unitOf = (key: string): WireUnit => {
  const { unit } = splitUnit(key);
  if (unit === null) throw new Error(`no unit in ${key}`);
  return unit;
};

describe("units at the end of keys", () => {
  it.each([
    ["rate_n_per_mm", "rate", "n_per_mm"],
    ["inner_mm", "inner", "mm"],
    ["camber_gain_deg_per_m", "camber_gain", "deg_per_m"],
    ["wheel_load_n", "wheel_load", "n"],
    ["torn_share", "torn", "share"],
    ["name", "name", undefined],
    ["mm", "mm", undefined],
    ["bar", "bar", undefined],
    ["n_per_mm", "", "n_per_mm"],
  ])("%s is %s in %s", (key, stem, suffix) => {
    const split = splitUnit(key);
    expect([split.stem, split.unit?.suffix]).toEqual([stem, suffix]);
  });

  it.each([
    ["x_mm", "x_m", "multiply by 0.001 (millimetres to metres)"],
    ["x_in", "x_mm", "multiply by 25.4 (inches to millimetres)"],
    ["x_rad", "x_deg", "multiply by 57.2957795131 (radians to degrees)"],
    ["x_kph", "x_m_per_s", "multiply by 0.277777777778 (kilometres per hour to metres per second)"],
    ["x_n_m", "x_nm", "the figure stays the same"],
    ["x_f", "x_c", "convert degrees Fahrenheit to degrees Celsius"],
    ["x_kg", "x_mm", null],
  ])("%s to %s: %s", (from, to, words) => {
    expect(formatConversion(unitOf(from), unitOf(to))).toBe(words);
  });

  it("goes there and back between any two units of a dimension", () => {
    for (const from of wireUnits) {
      for (const to of wireUnits.filter(({ dimension }) => dimension === from.dimension)) {
        if (from.factor === null || to.factor === null) continue;
        expect((from.factor / to.factor) * (to.factor / from.factor)).toBeCloseTo(1, 12);
      }
    }
  });
});

describe("the nearest word", () => {
  it("counts insertions, deletions, replacements and swaps", () => {
    expect(computeEditDistance("kitten", "sitting")).toBe(3);
    expect(computeEditDistance("", "abc")).toBe(3);
    expect(computeEditDistance("sied", "side")).toBe(1);
    expect(computeEditDistance("ab", "b")).toBe(1);
  });

  it("is none where none is near", () => {
    expect(findNearest("spirng", ["spring", "damper"])).toBe("spring");
    expect(findNearest("x", ["y"])).toBeNull();
    expect(findNearest("wheel", ["rim", "tyre"])).toBeNull();
    expect(findNearest("a".repeat(1e6), ["a"])).toBeNull();
  });
});
