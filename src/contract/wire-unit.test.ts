import { describe, expect, it } from "vitest";
import { computeEditDistance } from "#numeric";

import { doors } from "./doors/index.ts";
import { findNearest } from "./edit-distance.ts";
import { describeDoor } from "./registry.ts";
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
    ["shear_modulus_n_per_mm2", "shear_modulus", "n_per_mm2"],
    ["fluid_damping_n_s_per_mm", "fluid_damping", "n_s_per_mm"],
    ["speeds_km_per_h", "speeds", "km_per_h"],
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
    ["x_mpa", "x_n_per_mm2", "the figure stays the same"],
    ["x_f", "x_c", "convert degrees Fahrenheit to degrees Celsius"],
    ["x_kg", "x_mm", null],
  ])("%s to %s: %s", (from, to, words) => {
    expect(formatConversion(unitOf(from), unitOf(to))).toBe(words);
  });

  it("are whole in every calculation: no rate is taken for its divisor", () => {
    const keys = new Set<string>();
    const collect = (value: unknown): void => {
      if (typeof value !== "object" || value === null) return;
      if ("properties" in value && typeof value.properties === "object" && value.properties !== null)
        for (const key of Object.keys(value.properties)) keys.add(key);
      Object.values(value).forEach(collect);
    };
    for (const door of doors) collect(describeDoor(door).input);
    const rates = [...keys].filter((key) => key.includes("_per_"));
    expect(rates.length).toBeGreaterThan(10);
    expect(rates.filter((key) => splitUnit(key).unit?.suffix.includes("_per_") === false)).toEqual([]);
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
