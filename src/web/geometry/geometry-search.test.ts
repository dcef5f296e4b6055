import { expect, test } from "vitest";
import { readGeometrySearch } from "./geometry-search.ts";

test("what is drawn besides comes back from the address, and what is no figure or height is left out", () => {
  const search = {
    at: "rear-left/trailing-link/inner-bush",
    as: "torn-3",
    also: "firmer-shore-55-65~loose",
    lowered_mm: "30",
    second: "caster",
  };
  expect(readGeometrySearch(search)).toEqual({ ...search, lowered_mm: 30 });
  expect(readGeometrySearch({ lowered_mm: 300, first: "speed", also: "" })).toEqual({});
});
