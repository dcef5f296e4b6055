import { describe, expect, it } from "vitest";
import { familyFromSilhouette, workOf } from "#vehicle";
import { appraiseVisit } from "../../src/casework/cases/appraise.ts";
import type { LookContent } from "../../src/casework/cases/look.ts";
import { hasGrade, notOnFileWords } from "../../src/casework/cases/worth-saying.ts";
import { causes } from "../../src/casework/suspects/cause-table.ts";
import { lookState, placesOfCause } from "../../src/casework/suspects/look-state.ts";
import { look, reading, record, solver } from "./made-visit.ts";

const made = familyFromSilhouette({ frontLayout: "double-wishbone", rearLayout: "five-link", drivenAxle: "rear" });
if ("findings" in made) throw new Error(JSON.stringify(made.findings));
const { family } = made;
const appraise = (...looks: readonly (readonly [string, LookContent])[]) =>
  appraiseVisit(
    record(
      looks.map(([place, content]) => look(place, content)),
      { family, work: workOf(family) },
    ),
    solver,
  );
const at = (a: ReturnType<typeof appraise>, place: string) => {
  const found = a.findings.find((f) => f.place === place);
  if (!found) throw new Error(`no ${place}`);
  return found;
};
const PADS = "front-left/pads/thickness";
const TREAD = "rear-right/tyre/tread";
const JOINT = "front-left/tie-rod/outer-joint";
const pads = (mm: number) => [PADS, reading("pad-thickness", mm / 1000, 0.00006)] as const;
const tread = (mm: number) => [TREAD, reading("tread", mm / 1000, 0.0001)] as const;
const play = (mm: number, place = JOINT) => [place, reading("play", mm / 1000, 0.00006)] as const;

describe("what is dangerous by itself on a car line without work of its own", () => {
  it.each([
    [3.6, 0],
    [2.5, 2],
    [1.5, 3],
    [0.5, 4],
  ])("pads of %f mm are graded %i", (mm, grade) => {
    expect(at(appraise(pads(mm)), PADS).grade).toBe(grade);
  });

  it.each([
    [3.6, 0],
    [2.4, 2],
    [0.5, 3],
  ])("tread of %f mm is graded %i, with whose it is", (mm, grade) => {
    const found = at(appraise(tread(mm)), TREAD);
    expect(found.grade).toBe(grade);
    if (grade === 3) expect(found.limitWords).toContain("1.6 mm, the law of many places; that of this place counts");
  });

  it("is planned now, and what forbids driving holds the car", () => {
    const a = appraise(pads(0.5), tread(0.5));
    const places = (visit: number | null) =>
      a.plan.remedies.filter((r) => r.visit === visit).flatMap((r) => r.remedy.findings.map((f) => f.place));
    expect(places(0)).toEqual(expect.arrayContaining([PADS, TREAD]));
    expect(a.gates.find((g) => g.id === "do-not-drive")).toMatchObject({ state: "open" });
  });

  it("stays a guarded decision: near the lower limit it is plan for certain, and too close to call", () => {
    const found = at(appraise(pads(2.03)), PADS);
    expect([found.grade, found.closeToCall]).toEqual([2, true]);
    expect(at(appraise(pads(2.5)), PADS).closeToCall).toBe(false);
  });

  it("gives way to a maker's limit that asks for as much", () => {
    const maker = { place: "pads", axle: null, quantity: "pad-thickness", lower: 0.0012, upper: null } as const;
    const own = { ...maker, loadState: null, owner: "maker", source: "invented", grade: 3 } as const;
    const a = (mm: number) =>
      at(
        appraiseVisit(record([look(...pads(mm))], { family, work: { ...workOf(family), limits: [own] } }), solver),
        PADS,
      ).grade;
    expect([a(1.6), a(1.1), a(0.5)]).toEqual([0, 3, 4]);
  });
});

describe("play that was read where no limit is on file", () => {
  it.each([
    [0, 0],
    [0.4, 3],
    [8, 4],
  ])("%f mm in a ball joint is graded %i", (mm, grade) => {
    expect(at(appraise(play(mm)), JOINT).grade).toBe(grade);
  });

  it("says that it is from memory, and speaks for its suspect", () => {
    const a = appraise(play(8));
    expect(at(a, JOINT).limitWords).toContain("from memory");
    const cause = causes.find((c) => c.id === "outer-tie-rod-joint-play");
    expect(cause && lookState(cause, placesOfCause(cause, a.findings))).toBe("there");
  });

  it("is not judged where a sound one has play too: never sound, listed, and rules nothing out", () => {
    const bearings = ["front-left", "front-right", "rear-left", "rear-right"].map((c) =>
      play(0.2, `${c}/wheel-bearing`),
    );
    const a = appraise(...bearings);
    const found = at(a, "front-left/wheel-bearing");
    expect([found.grade, found.notKnown, found.howSure]).toEqual([
      null,
      true,
      "Held against nothing: no limit on file.",
    ]);
    expect(notOnFileWords(a.findings)).toBe("Read, with no limit on file: play (4 places).");
    expect(found.reasons.some((reason) => !hasGrade(reason))).toBe(true);
    expect(at(appraise(play(0.2, JOINT)), JOINT).reasons.some(hasGrade)).toBe(true);
    const cause = causes.find((c) => c.id === "wheel-bearing-play");
    expect(cause && lookState(cause, placesOfCause(cause, a.findings))).toBe("open");
  });
});

describe("thickness variation of a disc", () => {
  const points = (...mm: readonly number[]) =>
    mm.map((t, i) => ["front-left/disc/thickness", reading("thickness", t / 1000, 0.000003, String(i + 1))] as const);
  const VARIATION = "front-left/disc/variation";

  it("is the most less the least of the points, judged at its own place", () => {
    const found = at(appraise(...points(24.01, 24.0, 23.99, 24.02, 24.03, 24.01, 24.0, 24.0)), VARIATION);
    expect(found.grade).toBe(2);
    expect(found.found).toBe("thickness variation 0.040 mm");
    expect(found.reasons[0]?.text).toContain("limit 0.015 mm, from memory");
  });

  it("says nothing of fewer than four points, and gives way to one that was read itself", () => {
    expect(at(appraise(...points(24, 23.9, 24.03)), VARIATION).grade).toBeNull();
    const read = at(
      appraise(...points(24.01, 24, 23.99, 24.03), [VARIATION, reading("thickness-variation", 0.000005, 0.000002)]),
      VARIATION,
    );
    expect(read.found).toBe("thickness variation 0.005 mm");
    expect(read.grade).toBe(0);
  });
});
