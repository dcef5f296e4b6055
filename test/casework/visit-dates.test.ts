import { describe, expect, it } from "vitest";
import { paceWords, parseDay, visitDateWords } from "#casework";

const visit = { date: "2026-11-24", odometerKm: 138_250 };
const pace = { visit, year: 2011 };
const at = (odometerKm: number, date?: string) => ({ label: "Next service", odometerKm, date });

describe("when a visit of a plan is", () => {
  it("is today for the first, and by the car's own pace for the later ones", () => {
    expect(visitDateWords(at(138_250), pace)).toBe("24 Nov 2026");
    // 138 250 km in 15.4 years since the middle of 2011 are 8 977 km a year: 15 000 km take 1.67 years.
    expect(visitDateWords(at(153_250), pace)).toBe("about Jul 2028");
    expect(paceWords(pace)).toContain("9\u00a0000 km a year, this car's average since 2011");
  });

  it("is by a yearly service where the car's pace is not known, and says so", () => {
    for (const unknown of [
      { visit, year: null },
      { visit, year: 2026 },
      { visit: { ...visit, odometerKm: 0 }, year: 2011 },
    ])
      expect(paceWords(unknown)).toContain("15\u00a0000 km a year, from memory");
    expect(visitDateWords(at(153_250), { visit, year: null })).toBe("about Nov 2027");
  });

  it("is the day that was typed, whatever the pace", () => {
    expect(visitDateWords(at(153_250, "2027-03-05"), pace)).toBe("5 Mar 2027");
  });

  it.each([
    ["2027-03-05", "2027-03-05"],
    ["5.3.2027", "2027-03-05"],
    ["5/3/2027", "2027-03-05"],
    ["", ""],
    ["30.2.2027", null],
    ["29.2.2028", "2028-02-29"],
    ["in May", null],
  ])("reads %s", (typed, day) => expect(parseDay(typed)).toBe(day));
});
