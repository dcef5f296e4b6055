import { expect, it } from "vitest";
import { NOBODY, recordedBy } from "../../src/casework/cases/recorded-by.ts";

const by = (...names: readonly string[]) => names.map((who) => ({ who }));

it("names who began the visit before all others", () => {
  expect(recordedBy({ by: "P. Askew" }, by("MK"), "LT")).toBe("P. Askew");
});

it("names those who looked where nobody gave a name at the beginning, most looks first", () => {
  expect(recordedBy({ by: NOBODY }, by("LT", NOBODY, "MK", "MK"))).toBe("MK, LT");
  expect(recordedBy({ by: NOBODY }, by("A", "B", "C"), "D")).toBe("A, B and others");
});

it("names who makes the sheet where no look has a name, and says so where nobody has one", () => {
  expect(recordedBy({ by: NOBODY }, by(NOBODY), "LT")).toBe("LT");
  expect(recordedBy({ by: NOBODY }, [], NOBODY)).toBe(NOBODY);
  expect(recordedBy({ by: NOBODY }, [])).toBe(NOBODY);
});
