import { describe, expect, it } from "vitest";
import { askDoor } from "../registry.ts";

const places = (input: unknown): readonly string[] => {
  const answer = askDoor("metrology.conformity", input);
  return "findings" in answer ? answer.findings.map((f) => `${f.code} ${f.path}`) : [];
};
const sound = { reading: 22.03, u: 0.012, lower: 22, confidence: 0.95 };

describe("metrology.conformity", () => {
  it.each([
    ["no limit", { reading: 1, u: 1, confidence: 0.9 }, ["missing-key lower"]],
    ["limits null", { reading: 1, u: 1, lower: null, upper: null }, ["missing-key lower"]],
    ["limits exchanged", { ...sound, lower: 2, upper: 1 }, ["not-consistent upper"]],
    ["limits equal", { ...sound, lower: 2, upper: 2 }, ["not-consistent upper"]],
    ["a negative u", { ...sound, u: -1 }, ["out-of-range u"]],
    ["confidence of a half", { ...sound, confidence: 0.5 }, ["out-of-range confidence"]],
    ["confidence of one", { ...sound, confidence: 1 }, ["out-of-range confidence"]],
    ["confidence in per cent", { ...sound, confidence: 95 }, ["out-of-range confidence"]],
    ["NaN", { ...sound, reading: Number.NaN }, ["not-a-number reading"]],
    [
      "everything at once",
      { reading: "1", u: -1, lower: 3, upper: 2, confidence: 2, limit: 1 },
      ["not-consistent upper", "unknown-key limit", "wrong-type reading", "out-of-range u", "out-of-range confidence"],
    ],
  ])("refuses %s", (_, input, expected) => {
    expect(places(input)).toEqual(expected);
  });

  it("takes 95 % where no confidence is given, and null as no limit", () => {
    const answer = askDoor("metrology.conformity", { reading: 22.03, u: 0.012, lower: 22, upper: null });
    expect(answer).toEqual(askDoor("metrology.conformity", sound));
    expect(answer).toMatchObject({ output: { accept_to: null, decision: "within" } });
  });
});
