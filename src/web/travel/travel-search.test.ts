import { expect, test } from "vitest";
import type { FirmerRubber } from "#casework";
import { firmerBy, firmerOf, readTravelSearch } from "./travel-search.ts";

const PLACE = "rear-left/trailing-link/inner-bush";

test("an address that does not say how firm means twice, as it always did", () => {
  const search = readTravelSearch({ firmer: PLACE });
  expect(search).toEqual({ firmer: PLACE });
  expect(firmerOf(search)).toEqual({ kind: "firmer", factor: 2 });
});

test.each<FirmerRubber>([
  { kind: "firmer", factor: 1.05 },
  { kind: "firmer", factor: 3 },
  { kind: "firmer", hardness: { from: 55, to: 65.5 } },
  { kind: "firmer", hardness: { from: null, to: 65 } },
  { kind: "firmer", hardness: { from: null, to: null } },
])("how firm comes back from the address as it was entered: %j", (firmer) => {
  const search = readTravelSearch({ firmer: "every-rubber", firmer_by: firmerBy(firmer) });
  expect(firmerOf(search)).toEqual(firmer);
});

test("a number in the address is a factor, and what is no firmness is left out", () => {
  expect(firmerOf(readTravelSearch({ firmer_by: 3 }))).toEqual({ kind: "firmer", factor: 3 });
  for (const wrong of ["0.5", "shore-55", "shore-55-101", "soft", "", 99])
    expect(readTravelSearch({ firmer_by: wrong }), String(wrong)).toEqual({});
});
