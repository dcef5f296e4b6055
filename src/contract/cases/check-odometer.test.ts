import { describe, expect, it } from "vitest";
import { dayNumber } from "./calendar-day.ts";
import { checkOdometer, type OdometerReading } from "./check-odometer.ts";

const at = (date: string, odometerKm: number, visit = date): OdometerReading => ({ visit, date, odometerKm });
const history = [at("2029-05-14", 60_000), at("2030-05-14", 80_000)];

const codes = (
  reading: OdometerReading,
  others: readonly OdometerReading[],
  offsetKm = 0,
  confirmed = false,
): readonly string[] => checkOdometer(reading, others, offsetKm, confirmed).map(({ code }) => code);

const hintOf = (reading: OdometerReading, others: readonly OdometerReading[]): string =>
  checkOdometer(reading, others, 0, false)[0]?.hint ?? "";

describe("an odometer beside the visits before", () => {
  it.each([
    ["the first of a car", at("2031-05-14", 5), []],
    ["as before", at("2031-05-14", 80_000), history],
    ["a year on", at("2031-05-14", 100_000), history],
    ["three times as far as before", at("2031-05-14", 140_000), history],
    ["on the day of the last visit", at("2030-05-14", 80_004, "z"), history],
    ["between two visits", at("2029-11-14", 70_000), history],
    ["before all others", at("2028-01-01", 20_000), history],
    ["saved again", at("2030-05-14", 80_100), history],
  ])("%s is fine", (_, reading, others) => {
    expect(codes(reading, others)).toEqual([]);
  });

  it("lower than before is not, whoever confirms it", () => {
    expect(codes(at("2031-05-14", 30_000), history)).toEqual(["odometer-lower"]);
    expect(codes(at("2031-05-14", 30_000), history, 0, true)).toEqual(["odometer-lower"]);
    expect(hintOf(at("2031-05-14", 30_000), history)).toContain("at least 50000 km");
  });

  it("in miles is told by what it would be in km", () => {
    expect(hintOf(at("2031-05-14", 60_000), history)).toContain("96561 km");
    expect(codes(at("2031-05-14", 60_000), history)).toEqual(["odometer-miles"]);
  });

  it("in km taken for miles is told by what it was read as", () => {
    const reading = at("2031-05-14", Math.round(98_000 * 1.609_344));
    expect(codes(reading, history)).toEqual(["odometer-miles"]);
    expect(hintOf(reading, history)).toContain("98000 km");
    expect(codes(reading, history, 0, true)).toEqual([]);
  });

  it("with the tenths typed too is told by its last digit", () => {
    expect(codes(at("2031-05-14", 980_003), history)).toEqual(["odometer-jump"]);
    expect(hintOf(at("2031-05-14", 980_003), history)).toContain("98000 km");
    expect(codes(at("2031-05-14", 980_003), history, 0, true)).toEqual([]);
  });

  it("higher than at a later visit is not", () => {
    expect(codes(at("2029-11-14", 81_000), history)).toEqual(["odometer-lower"]);
  });

  it("that was replaced counts on from its offset, from there on only", () => {
    const replaced = [...history, at("2031-01-01", 20)];
    expect(codes(at("2031-01-01", 20), history, 82_000)).toEqual([]);
    expect(codes(at("2031-01-01", 20), history, 70_000)).toEqual(["odometer-lower"]);
    expect(codes(at("2031-05-14", 9_000), replaced, 82_000)).toEqual([]);
    expect(codes(at("2031-05-14", 10), replaced, 82_000)).toEqual(["odometer-lower"]);
    expect(codes(at("2030-05-14", 79_000), replaced, 82_000)).toEqual([]);
  });
});

describe("days of the calendar", () => {
  it("are counted as the calendar does, leap days and turns of centuries included", () => {
    for (const [from, to] of [
      ["1900-02-28", "1900-03-01"],
      ["2000-02-28", "2000-03-01"],
      ["2028-02-29", "2028-03-01"],
      ["2030-12-31", "2031-01-01"],
      ["1999-01-01", "2031-05-14"],
      ["2031-05-14", "2031-05-14"],
    ] as const) {
      expect(dayNumber(to) - dayNumber(from)).toBe((Date.parse(to) - Date.parse(from)) / 86_400_000);
    }
  });
});
