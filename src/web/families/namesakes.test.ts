import { expect, test } from "vitest";
import type { FamilyLine } from "../server/family-list.ts";
import { namesakeWords } from "./namesakes.ts";

const axle = { layout: "strut", rung: "scaled", tyre_size: "205/55 R16" } as const;
const line = {
  id: "wren",
  version: "1",
  name: "Wren",
  read_only: false,
  off_list: false,
  invented: false,
  wheelbase_mm: 2700,
  kerb_mass_kg: 1450,
  front: axle,
  rear: axle,
} as const satisfies FamilyLine;

test("a name nobody else has needs no more words", () => {
  expect(namesakeWords(line, [line, { ...line, id: "robin", name: "Robin" }])).toBeNull();
});

test("namesakes are told apart by what differs, and always by their ids", () => {
  const longer = { ...line, id: "wren-2", wheelbase_mm: 2850 };
  expect(namesakeWords(line, [line, longer])).toBe("wheelbase 2700 mm, kept as wren");
  expect(namesakeWords(line, [line, { ...line, id: "wren-2" }])).toBe("kept as wren");
  expect(
    namesakeWords(line, [
      line,
      { id: "wren-3", version: "1", name: "wren", read_only: false, off_list: false, findings: [] },
    ]),
  ).toBe("kept as wren");
});
