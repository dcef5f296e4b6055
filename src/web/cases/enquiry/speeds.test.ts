import { expect, test } from "vitest";
import { parseSpeeds, speedWords } from "./speeds.ts";

test("a speed or a range is read however it is joined", () => {
  expect(parseSpeeds("90")).toEqual([90, 90]);
  expect(parseSpeeds("90 to 130")).toEqual([90, 130]);
  expect(parseSpeeds(" 90–130 km/h")).toEqual([90, 130]);
  expect(parseSpeeds("")).toBeNull();
});

test("what is no speed is not taken for one", () => {
  for (const text of ["fast", "130 to 90", "9000", "90 to 500"]) expect(parseSpeeds(text)).toBeUndefined();
});

test("what is shown reads back to the same", () => {
  for (const speeds of [
    [60, 60],
    [90, 130],
  ] as const)
    expect(parseSpeeds(speedWords(speeds))).toEqual(speeds);
});
