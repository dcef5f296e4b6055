import { expect, test } from "vitest";
import { parseSpeeds, speedWords } from "./speeds.ts";

test("a speed or a range is read however it is joined, and whichever end comes first", () => {
  expect(parseSpeeds("90")).toEqual({ speeds: [90, 90] });
  expect(parseSpeeds("90 to 130")).toEqual({ speeds: [90, 130] });
  expect(parseSpeeds(" 90–130 km/h")).toEqual({ speeds: [90, 130] });
  expect(parseSpeeds("80 – 60")).toEqual({ speeds: [60, 80] });
  expect(parseSpeeds("62,5 − 80")).toEqual({ speeds: [62.5, 80] });
  expect(parseSpeeds("55 mph")).toEqual({ speeds: [88.5, 88.5] });
  expect(parseSpeeds("55 to 70 mph")).toEqual({ speeds: [88.5, 112.7] });
  expect(parseSpeeds("60 km/h - 80 km/h")).toEqual({ speeds: [60, 80] });
  expect(parseSpeeds("")).toEqual({ speeds: null });
});

test("what is no speed is not taken for one, and the words say what came and what was needed", () => {
  for (const text of ["fast", "9000", "90 to 500", "60-80-90", "60 to", "-30"])
    expect(parseSpeeds(text)).toEqual({
      trouble: `Speed: “${text}” came; needed is one speed or a range in km/h, 0 to 400: 90 to 130. Not kept yet.`,
    });
});

test("what is shown reads back to the same", () => {
  for (const speeds of [
    [60, 60],
    [90, 130],
  ] as const)
    expect(parseSpeeds(speedWords(speeds))).toEqual({ speeds });
});
