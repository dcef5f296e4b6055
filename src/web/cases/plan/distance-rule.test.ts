import { expect, test } from "vitest";
import { distanceRule, nameRows } from "./distance-rule.ts";

test("the figures of a car that counts miles are round in miles", () => {
  const plan = { visits: [{ label: "Now", odometerKm: 160_934.4 }], declined: [], agreed: [], fixed: [] };
  const { ticks } = distanceRule({ ...plan, horizonKm: 160_934.4 + 30_000 }, 1.609_344);
  expect(ticks.map((km) => Math.round(km / 1.609_344))).toContain(105_000);
});

test("the rule runs from the first visit to the horizon with few round ticks", () => {
  const rule = distanceRule({
    visits: [
      { label: "Now", odometerKm: 128_440 },
      { label: "Next", odometerKm: 143_440 },
    ],
    declined: [],
    agreed: [],
    fixed: [],
    horizonKm: 165_940,
  });
  expect(rule.share(128_440)).toBe(0);
  expect(rule.share(143_440)).toBeCloseTo(0.4, 12);
  expect(rule.share(900_000)).toBe(1);
  expect(rule.ticks).toEqual([130_000, 135_000, 140_000, 145_000, 150_000, 155_000, 160_000, 165_000]);
});

test("names of visits that lie close together stand in rows of their own", () => {
  const at = (label: string, share: number) => ({ letters: label.length, share });
  expect(nameRows([at("Now", 0), at("Next service", 0.4), at("Second service", 0.8)])).toEqual([0, 0, 0]);
  expect(nameRows([at("Now", 0), at("Next service", 0.4), at("Second service", 0.57)])).toEqual([0, 0, 1]);
  expect(nameRows([at("Now", 0), at("A", 0.01), at("B", 0.02), at("C", 0.6)])).toEqual([0, 1, 2, 0]);
});
