import { expect, it } from "vitest";
import { appraiseVisit } from "../../src/casework/cases/appraise.ts";
import { splitByWork } from "../../src/casework/cases/split-by-work.ts";
import { look, ouzel, reading, record, solver, work } from "./made-visit.ts";

const DISC = "front-left/disc/thickness";
const thickness = (mm: number) => look(DISC, reading("thickness", mm / 1000, 0.000005, "1"));
const bare = { ...work, limits: [] };
const findingAt = (mm: number, change: Parameters<typeof record>[1], stamped: number | null) => {
  const base = record([thickness(mm)], change);
  const visit = stamped === null ? base.visit : { ...base.visit, discMinimum: { front: stamped / 1000, rear: null } };
  return appraiseVisit({ ...base, visit }, solver).findings.find((f) => f.place === DISC);
};

it("a disc of a car with no limit on file is held against the minimum stamped on it", () => {
  expect(findingAt(20.9, { work: bare }, null)).toMatchObject({ grade: null, limitWords: null });
  expect(findingAt(20.9, { work: bare }, 21.4)).toMatchObject({
    grade: 3,
    limitWords: "limit at least 21.40 mm, by its maker",
  });
  expect(findingAt(22.5, { work: bare }, 21.4)).toMatchObject({ grade: 0 });
});

it("what is stamped on the disc counts before what is on file of the car line, on its axle alone", () => {
  expect(findingAt(21.5, {}, null)?.grade).toBe(3);
  expect(findingAt(21.5, {}, 20)?.grade).toBe(0);
  const base = record([thickness(21.5)], {});
  const rear = { ...base.visit, discMinimum: { front: null, rear: 0.01 } };
  const found = appraiseVisit({ ...base, visit: rear }, solver).findings.find((f) => f.place === DISC);
  expect(found?.grade).toBe(3);
});

it("a disc below its stamp is worn also where a page parts what was found from what is left", () => {
  // 27.5 mm is well within what the family has on file.
  const family = { ...ouzel(), work };
  const jobCard = {
    steps: [{ step: "op", doneBy: "MK", at: "2026-03-12T10:00:00Z", hubToArch: null, torqueNm: null, note: null }],
  };
  const split = (front: number | null) =>
    splitByWork({
      looks: [thickness(27.5)],
      past: [],
      family,
      visit: { discMinimum: { front, rear: null } },
      jobCard,
      plan: null,
    }).leavesAt(DISC, true);
  expect(split(0.028)).toBe(true);
  expect(split(null)).toBe(false);
});
