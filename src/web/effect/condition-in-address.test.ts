import { expect, test } from "vitest";
import { conditionOf, readConditionSearch, searchOfCondition } from "./condition-in-address.ts";

test("a condition survives the way through the address", () => {
  const condition = { contactRise: -0.012, rack: 0.03, braking: 0, lateral: -1500, drive: 0 };
  const written = Object.fromEntries(
    Object.entries(searchOfCondition(condition)).map(([key, value]) => [key, String(value)]),
  );
  expect(conditionOf(readConditionSearch(written))).toEqual(condition);
});

test("what is no number is left out, and the usual stands in its place", () => {
  const read = readConditionSearch({ rise_mm: "high", braking_n: "NaN", rack_mm: "", lateral_n: "1e999" });
  expect(read).toEqual({});
  expect(conditionOf(read)).toEqual({ contactRise: 0, rack: 0, braking: 2000, lateral: 0, drive: 0 });
});
