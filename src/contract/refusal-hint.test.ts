import { describe, expect, it } from "vitest";
import { hintRange, hintType } from "./refusal-hint.ts";

describe("what to do about a value of another kind", () => {
  it.each([
    ["2620", "Write the number without quotes."],
    ["0,08", "Write the number without quotes and with a decimal point."],
    ["2620 mm", "Write the number alone, without quotes: its unit stands in the key."],
    ["-1.5°", "Write the number alone, without quotes: its unit stands in the key."],
    ["heavy", ""],
    [null, "Leave the key out where there is nothing to say."],
  ])("%j for a number", (given, hint) => {
    expect(hintType(given, "number")).toBe(hint);
  });

  it("says nothing of units where no number is needed", () => {
    expect(hintType("2620 mm", "boolean")).toBe("");
  });
});

describe("what to do about a number out of its range", () => {
  it.each([
    [58, 1, ["front_weight_share"], "A share runs from 0 to 1: 58 % is 0.58."],
    [40, 1, ["torn_share", "plan", 0], "A share runs from 0 to 1: 40 % is 0.4."],
    [1.5, 1, ["spring", "seat", "fraction"], ""],
    [56, 0.7, ["front_weight_share"], "A share runs from 0 to 1: 56 % is 0.56."],
    [-1, 500, ["kerb_mass_kg"], "Is it the sign?"],
    [-11_000, 0, ["inner_joint", "radial_n_per_mm"], "Is it the sign?"],
    [0, 0, ["inner_joint", "radial_n_per_mm"], "An end that does not give is left out: it counts as rigid."],
    [-25, 0, ["spring", "rate_n_per_mm"], "Is it the sign?"],
    [0, 0, ["spring", "rate_n_per_mm"], ""],
    [-1, 0, ["count"], ""],
  ])("%j against %j at %j", (given, bound, path, hint) => {
    expect(hintRange(given, bound, path)).toBe(hint);
  });
});
