import { describe, expect, it } from "vitest";
import { parseTypedQuantity, typedQuantityTrouble } from "./parse-typed-quantity.ts";

const read = (text: string, unit: string, bounds = {}): number | string => {
  const typed = parseTypedQuantity(text, unit, bounds);
  return typed.kind === "number" ? typed.value : typed.kind;
};
const pressure = { low: 0.5, high: 4.5 };
const disc = { low: 4, high: 45 };

describe("a figure as people write it into a field", () => {
  it.each([
    ["2.3", "bar", 2.3],
    ["2,3 bar", "bar", 2.3],
    ["2.3bar", "bar", 2.3],
    ["32 psi", "bar", 2.206322],
    ["32PSI", "bar", 2.206322],
    ["32 lb/in²", "bar", 2.206322],
    ["230 kPa", "bar", 2.3],
    ["24.35 mm", "mm", 24.35],
    ["0.95 in", "mm", 24.13],
    ['0.95"', "mm", 24.13],
    ["0,95 inch", "mm", 24.13],
    ["5/32 in", "mm", 3.96875],
    ["2,4 cm", "mm", 24],
    ["212 °F", "°C", 100],
    ["180 °C", "°C", 180],
    ["30 lb·ft", "N·m", 40.674538],
    ["30 Nm", "N·m", 30],
    ["30 N·m", "N·m", 30],
    ["12 N", "N", 12],
    ["55 mph", "km/h", 88.51392],
    ["90 km/h", "km/h", 90],
    ["71500 mi", "km", 115068.096],
    ["3", "", 3],
  ])("%j in %s is %d", (text, unit, value) => expect(read(text, unit)).toBeCloseTo(value, 5));

  it.each([
    ["0.12", 0.12],
    ["-0.12", -0.12],
    ["−0.12°", -0.12],
    ["–0,12 deg", -0.12],
    ["0°07'", 7 / 60],
    ["0° 7′", 7 / 60],
    ["0°07", 7 / 60],
    ["7'", 7 / 60],
    ["−7’", -7 / 60],
    ["-1°30'", -1.5],
    ["-0°12'", -0.2],
    ["1°30'30\"", 1.5 + 30 / 3600],
    ["90'", 1.5],
    ["-0'", 0],
  ])("%j is %d degrees", (text, value) => expect(read(text, "°")).toBeCloseTo(value, 12));

  it.each([
    ["1°75'", "°"],
    ["7' 80\"", "°"],
    ["°", "°"],
    ["'", "°"],
    ["5/0 in", "mm"],
    ["5/32", "mm"],
    ["24 psi", "mm"],
    ["24 mm", "bar"],
    ["psi", "bar"],
    ["32 psi psi", "bar"],
    ["0 in dex", "mm"],
  ])("%j in %s is none", (text, unit) => {
    expect(read(text, unit)).toBe("no-number");
    expect(typedQuantityTrouble(text, {}, unit)).toBe(`give a number, in ${unit}`);
  });

  it("nothing typed is nothing", () => expect(read(" ", "bar")).toBe("empty"));

  it("says what was written where it was another unit, and nothing where it was the field's own", () => {
    expect(parseTypedQuantity("32 psi", "bar")).toMatchObject({ as: "32 psi" });
    expect(parseTypedQuantity("0°07'", "°")).toMatchObject({ as: "0°07'" });
    expect(parseTypedQuantity("2.3 bar", "bar")).toMatchObject({ as: null });
    expect(parseTypedQuantity("2.3", "bar")).toMatchObject({ as: null });
  });

  it("one mark before three digits is what the range leaves, in the unit that was written", () => {
    expect(read("24,350", "mm", disc)).toBe(24.35);
    expect(read("0,950 in", "mm", disc)).toBeCloseTo(24.13, 6);
    expect(read("32,000 psi", "bar", pressure)).toBeCloseTo(2.206322, 5);
  });

  it("a figure in another unit is never taken for the field's", () => {
    expect(read("0.95", "mm", disc)).toBe(0.95);
    expect(read("0.95 in", "mm", disc)).toBeCloseTo(24.13, 6);
  });
});
