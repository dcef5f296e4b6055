import { describe, expect, it } from "vitest";
import type { QuantityName } from "#vehicle";
import { wireUnits } from "../wire-unit.ts";
import { checkBelowNought, checkReading } from "./check-reading.ts";
import { plausibleReadings } from "./plausible-readings.ts";
import { quantityNames, readingUnits } from "./reading-unit.ts";

const check = (quantity: QuantityName, typed: number) =>
  checkReading({ kind: "reading", quantity, value: readingUnits[quantity].toInside(typed), u: 0, point: null });

describe("a reading beside what cars show", () => {
  it.each(quantityNames)("%s is taken within its range, with its ends, and not beyond", (quantity) => {
    const { low, high } = plausibleReadings[quantity];
    expect(low).toBeLessThan(high);
    for (const typed of [low, (low + high) / 2, high]) expect(check(quantity, typed)).toEqual([]);
    for (const typed of [low - 1, high + 1]) expect(check(quantity, typed)).toHaveLength(1);
  });

  it.each([
    ["pad-thickness", 110, "one place off it is 11"],
    ["thickness", 280, "one place off it is 28"],
    ["thickness", 2200, "two places off it is 22"],
    ["thickness", 1.1, "in inches it is 27.94"],
    ["ride-height", 0.38, "in metres it is 380"],
    ["pressure", 33, "in psi it is 2.275"],
    ["pressure", 240, "in kPa it is 2.4"],
    ["camber", -75, "in minutes of arc it is -1.25"],
    ["boiling-point", 446, "in degrees Fahrenheit it is 230"],
  ] as const)("%s of %d is said as it was probably meant", (quantity, typed, words) => {
    expect(check(quantity, typed)[0]?.hint).toContain(words);
  });

  it.each(quantityNames)("%s of less than nothing is refused for good, unless it is an angle to a side", (quantity) => {
    const content = {
      kind: "reading",
      quantity,
      value: readingUnits[quantity].toInside(-1),
      u: 0,
      point: null,
    } as const;
    const codes = checkBelowNought(content).map(({ code }) => code);
    expect(codes).toEqual(["camber", "toe", "caster"].includes(quantity) ? [] : ["reading-below-nought"]);
    if (codes.length > 0) expect(check(quantity, -1).map(({ code }) => code)).toEqual(codes);
    expect(checkBelowNought({ ...content, value: 0 })).toEqual([]);
  });

  it("has nothing to say of looks that read nothing", () => {
    expect(checkReading({ kind: "nothing-seen" })).toEqual([]);
    expect(checkReading({ kind: "not-taken", quantity: "tread" })).toEqual([]);
  });

  it("has its keys in units the program knows", () => {
    const known = new Set(["", ...wireUnits.map(({ suffix }) => suffix)]);
    expect(quantityNames.filter((quantity) => !known.has(readingUnits[quantity].suffix))).toEqual([]);
  });
});
