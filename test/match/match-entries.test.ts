import { describe, expect, it } from "vitest";
import { parseFamily } from "#contract";
import { demoFamilySheets } from "#demo";
import { formatEntries, questionOf, readEntries } from "../../src/web/match/match-entries.ts";
import { readMatchSearch } from "../../src/web/match/match-search.ts";

const parsed = parseFamily(structuredClone(demoFamilySheets["ouzel-saloon"]));
if ("findings" in parsed) throw new Error("no family");
const { family } = parsed;
const search = {
  corner: "rear-left",
  read: "650 mm|-1°12'|0.15;25.0 in|−1.5°|;700|-0,9|12'",
  bench: "toe-link|0.41 m",
  pm: "2|0.1|0.04|1|3|0",
};

describe("entries of a match", () => {
  it("come back from an address as they were typed, and give the same address", () => {
    const entries = readEntries(readMatchSearch(search));
    expect(entries.rows[1]).toEqual({ height: "25.0 in", camber: "−1.5°", toe: "" });
    expect({ corner: "rear-left", ...formatEntries(entries) }).toEqual(search);
    expect(formatEntries(readEntries({}))).toEqual({});
  });

  it("are read with their units: the first height is ride height, and bump is where the arch comes nearer", () => {
    const { asked, whole } = questionOf(family, "rear-left", readEntries(readMatchSearch(search)));
    expect(whole).toBe(3);
    expect(asked?.readings.map(({ travel }) => Math.round(travel * 1e6))).toEqual([0, 15_000, -50_000]);
    expect(asked?.readings[0]?.camber).toBeCloseTo((-1.2 * Math.PI) / 180, 12);
    expect(asked?.readings[1]?.toe).toBeNull();
    expect(asked?.readings[2]?.toe).toBeCloseTo((0.2 * Math.PI) / 180, 12);
    expect(asked?.lengths).toEqual([{ link: "toe-link", length: 0.41 }]);
    expect(asked?.u.toe).toBeCloseTo((0.02 * Math.PI) / 180, 12);
    expect([asked?.u.heightBase, asked?.u.bodyBase]).toEqual([0.0015, 0]);
  });

  it("ask nothing with fewer than three whole rows, or a plus or minus of nothing", () => {
    const two = readEntries({ read: "650|-1|0.1;620||;700|-0.9|0.2" });
    expect(questionOf(family, "rear-left", two)).toEqual({
      asked: null,
      whole: 2,
      troubles: [{ where: "height 2", said: "camber or toe is still to come" }],
    });
    for (const pm of ["0|0.1|0.04|1|0|0", "1|0.1|0.04|1|-1|0", "1|0.1|0.04|1|some|0"])
      expect(questionOf(family, "rear-left", readEntries(readMatchSearch({ ...search, pm }))).asked, pm).toBeNull();
  });

  it("take what is usual where an address says less", () => {
    const { asked } = questionOf(family, "rear-left", readEntries(readMatchSearch({ ...search, pm: "2|0.1|0.04" })));
    expect([asked?.u.length, asked?.u.heightBase, asked?.u.bodyBase]).toEqual([0.0005, 0.001, 0]);
  });
});
