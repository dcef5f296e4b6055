import { expect, test } from "vitest";
import { odometerNeeds, odometerText, offsetAfter, parseOdometer } from "./odometer.ts";

test("a distance is read whatever stands between its digits", () => {
  for (const text of ["128440", "128 440", "128,440", "128.440"]) expect(parseOdometer(text, "km")).toBe(128_440);
  expect(parseOdometer(" ", "km")).toBeNull();
  for (const text of ["many", "12e5", "-5", "99999999"]) expect(parseOdometer(text, "km")).toBeUndefined();
});

test("a unit written behind a distance counts, whichever the car has", () => {
  expect(parseOdometer("128 440 km", "km")).toBe(128_440);
  expect(parseOdometer("71500 mi", "km")).toBeCloseTo(71_500 * 1.609_344, 6);
  expect(parseOdometer("128440 km", "mi")).toBeCloseTo(128_440, 6);
  expect(parseOdometer("100.5 km", "km")).toBeUndefined();
});

test("miles are kept as kilometres and shown as the same miles", () => {
  const km = parseOdometer("79809", "mi") ?? Number.NaN;
  expect(km).toBeCloseTo(128_440.1, 1);
  expect(odometerText(km, "mi")).toBe("79809");
});

test("a replaced odometer goes on from where the old one stood", () => {
  expect(12 + offsetAfter(128_440, 12)).toBe(128_440);
  expect(offsetAfter(100, 200)).toBe(0);
});

test("the limits of an odometer are said in its own unit", () => {
  expect(odometerNeeds("km")).toBe("a whole number of km, 0 to 3\u202f000\u202f000");
  expect(odometerNeeds("mi")).toContain("0 to 1\u202f864");
});
