import { describe, expect, it } from "vitest";
import { computeTravelSheet } from "#casework";
import { radiansFromDegrees as rad } from "#quantity";
import type { AlignmentTarget, FamilyWork } from "#vehicle";
import { appraiseVisit } from "../../src/casework/cases/appraise.ts";
import { carryTargets } from "../../src/casework/readings/carry-targets.ts";
import { findSuspects } from "../../src/casework/suspects/visit-suspects.ts";
import { look, ouzel, reading, record, solver, work } from "./made-visit.ts";

const target = (change: Partial<AlignmentTarget>): AlignmentTarget => ({
  axle: "front",
  camber: [rad(-1.2), rad(-0.4)],
  toe: [rad(0.02), rad(0.14)],
  caster: [rad(5.5), rad(7)],
  hubToArch: 0.372,
  heightTolerance: 0.01,
  heightApart: 0.012,
  camberApart: rad(0.4),
  casterApart: null,
  thrust: null,
  owner: "maker",
  source: "invented",
  ...change,
});
const rear = target({ axle: "rear", toe: [rad(0.08), rad(0.2)], caster: null, hubToArch: 0.366, thrust: rad(0.05) });
const pressure = {
  place: "tyre/pressure",
  axle: "front",
  quantity: "pressure",
  lower: 2.1e5,
  upper: 2.6e5,
  loadState: null,
  owner: "maker",
  source: "invented",
  grade: 2,
} as const;
const onFile: FamilyWork = { ...work, limits: [...work.limits, pressure], alignment: [target({}), rear] };

const height = (corner: string, mm: number) => look(`${corner}/ride-height`, reading("ride-height", mm / 1000, 0.001));
const heights = (fl: number, fr: number, rl: number, rr: number) => [
  height("front-left", fl),
  height("front-right", fr),
  height("rear-left", rl),
  height("rear-right", rr),
];
const straight = heights(372, 372, 366, 366);
const angle = (corner: string, quantity: "camber" | "toe" | "caster", degrees: number, u = 0.02) =>
  look(`${corner}/alignment`, reading(quantity, rad(degrees), rad(u)));

const settled = { ...record([]).visit, settled: true as boolean | null };
const appraise = (looks: Parameters<typeof record>[0], change: Parameters<typeof record>[1] = {}) =>
  appraiseVisit(record(looks, { work: onFile, visit: settled, ...change }), solver);
const at = (a: ReturnType<typeof appraise>, place: string) => {
  const found = a.findings.find((f) => f.place === place);
  if (!found) throw new Error(`no ${place}`);
  return found;
};

describe("heights", () => {
  it("are held against what is on file with whose it is, the other side, and say what a low corner can be", () => {
    const a = appraise(heights(358, 372, 366, 366));
    const low = at(a, "front-left/ride-height");
    // 358 mm with u 1 mm: 14 below 372, 4 beyond the 10 of tolerance, 2 beyond the 12 the sides may differ by.
    expect(low.grade).toBe(2);
    expect(low.limitWords).toBe("limit 362 mm to 382 mm, by its maker");
    expect(low.reasons.map((r) => [r.judgement?.against, r.judgement?.decision])).toEqual([
      ["limit", "beyond"],
      ["twin", "too close to call"],
    ]);
    expect(low.means.map((m) => m.cause)).toEqual([
      "coil-spring-broken",
      "coil-spring-sagged",
      "spring-seated-wrong-pad-missing",
      "bushes-tightened-hanging",
      "bent-arm-knuckle-or-strut",
    ]);
    expect(low.means[0]).toMatchObject({ state: "open", says: "look at: front left, spring and seats" });
    // Nothing seen yet: the shares of the complaint itself, broken 30 and sagged 22 of 100, less what two at once take.
    expect(low.means[0]?.chance ?? 0).toBeGreaterThan(low.means[1]?.chance ?? 1);
    expect(low.advice).toMatch(/^Look first: coil spring broken/);
    expect(at(a, "front-right/ride-height").means).toEqual([]);
    expect(a.uncured.map((f) => f.place)).toContain("front-left/ride-height");
  });

  it("that are low with a broken spring point to it, and to the spring of that corner alone", () => {
    const broken = (corner: string) => look(`${corner}/spring`, { kind: "signs", signs: ["broken"] });
    const here = at(appraise([...heights(358, 372, 366, 366), broken("front-left")]), "front-left/ride-height");
    expect(here.means[0]).toMatchObject({ state: "found", places: ["front-left/spring"] });
    expect(here.advice).toContain("Cure what was found first: coil spring broken");
    expect(here.means[0]?.chance ?? 0).toBeGreaterThan(0.5);
    const elsewhere = at(appraise([...heights(358, 372, 366, 366), broken("front-right")]), "front-left/ride-height");
    expect(elsewhere.means[0]?.state).toBe("open");
  });

  it("within their limit and yet not the height of the targets: camber is carried to it by the linkage, and it decides", () => {
    const read = (fl: number, camber: number) =>
      at(appraise([...heights(fl, 372, 366, 366), angle("front-left", "camber", camber)]), "front-left/alignment");
    expect(read(372, -0.8).caveat).toBeNull();
    const low = read(364, -1.3);
    expect(low.caveat).toContain("The targets are those of 372 mm; this car stands at left 364 mm, right 372 mm");
    expect(low.caveat).toContain("Camber is carried to it by the linkage on file, left by −0.17°");
    expect(low.caveat).toContain("Toe is not carried to it: the sign of its change is not sure");
    expect(low.limitWords).toBe("limit −1.37° to −0.57°, by its maker, carried to the height it stands at");
    expect(read(372, -1.3).grade).toBe(2);
    expect([low.grade, low.closeToCall]).toEqual([0, false]);
  });

  it("of another height carry an angle by what Over travel shows between the two heights, with its band", () => {
    const family = ouzel();
    const answer = computeTravelSheet({
      family,
      corner: "rear-left",
      condition: { contactRise: 0, rack: 0, braking: 0, lateral: 0, drive: 0 },
      subjects: [{ kind: "sound" }],
      figures: ["camber", "toe"],
    });
    if ("findings" in answer) throw new Error("no curves");
    const rise = 0.02;
    const [wheel] = carryTargets(family, "rear", rear, new Map([["left", 0.366 - rise]]));
    for (const { figure, lines } of answer.sheet.plots) {
      const [line] = lines;
      const valueAt = (at: number): number =>
        line?.values[line.rises.findIndex((r) => Math.abs(r - at) < 1e-9)] ?? Number.NaN;
      const carried = wheel?.angles[figure === "toe" ? "toe" : "camber"];
      if (carried?.kind !== "carried") throw new Error(`${figure} is not carried`);
      expect(carried.by, figure).toBeCloseTo(rad(valueAt(rise) - valueAt(0)), 9);
      expect(carried.sd).toBeGreaterThan(0);
      expect(carried.sd).toBeLessThan(Math.abs(carried.by) / 1.95);
    }
  });

  it("read before the car had settled are not known, and the alignment judged on them says so", () => {
    for (const [said, words] of [
      [false, "had not settled"],
      [null, "nobody said"],
    ] as const) {
      const a = appraise([...heights(340, 372, 366, 366), angle("front-left", "camber", -0.8)], {
        visit: { ...settled, settled: said },
      });
      const unknown = at(a, "front-left/ride-height");
      expect([unknown.grade, unknown.notKnown, unknown.means]).toEqual([null, true, []]);
      expect(unknown.caveat).toContain("not known");
      expect(at(a, "front-left/alignment").grade).toBe(0);
      expect(at(a, "front-left/alignment").caveat).toContain(words);
      expect(a.notLookedAt).toBe(appraise([]).notLookedAt);
    }
  });

  it("against their own past count where they changed, and past heights that had not settled never do", () => {
    const past = [height("front-left", 384)];
    const now = at(appraise(heights(371, 372, 366, 366), { past }), "front-left/ride-height");
    // 13 mm with u of 1.4 mm: beyond the 10 it may change by; within everything else.
    expect(now.grade).toBe(1);
    expect(now.reasons[0]).toMatchObject({ towards: "less", grade: 1 });
    expect(now.reasons[0]?.text).toContain("384 mm last time");
  });

  it("without a tolerance on file are named beside the height on file and held against nothing", () => {
    const bare = { ...onFile, alignment: [target({ heightTolerance: null, heightApart: null }), rear] };
    const found = at(appraise(heights(340, 341, 366, 366), { work: bare }), "front-left/ride-height");
    expect([found.grade, found.notKnown]).toEqual([null, true]);
    expect(found.reasons[0]?.text).toContain("341 mm on the other side");
    expect(found.reasons.find((r) => r.judgement && "why" in r.judgement)?.text).toBe(
      "ride height 340 mm, 372 mm on file, by its maker, without a tolerance: not held against it",
    );
  });
});

describe("alignment", () => {
  it("judges each angle of a wheel by its own limit, guarded by the instrument", () => {
    const found = at(appraise([...straight, angle("front-left", "camber", -1.6)]), "front-left/alignment");
    expect(found.grade).toBe(2);
    expect(found.limitWords).toBe("limit −1.20° to −0.40°, by its maker");
    expect(found.found).toBe("camber −1.60°");
    const close = at(appraise([...straight, angle("front-left", "camber", -1.21, 0.05)]), "front-left/alignment");
    expect([close.grade, close.closeToCall]).toEqual([1, true]);
    const far = at(appraise([...straight, angle("front-left", "camber", -1.21, 0.002)]), "front-left/alignment");
    expect([far.grade, far.closeToCall]).toEqual([2, false]);
  });

  it("names whose limit decided where several angles of a wheel were read", () => {
    const found = at(
      appraise([...straight, angle("front-left", "camber", -0.8), angle("front-left", "toe", 0.3)]),
      "front-left/alignment",
    );
    expect(found.limitWords).toBe("limit 0.02° to 0.14°, by its maker");
  });

  it("holds camber against the other side by what is on file", () => {
    const a = appraise([...straight, angle("front-left", "camber", -0.45), angle("front-right", "camber", -1.1)]);
    // 0.65 apart with u of 0.028, 0.40 allowed by the maker.
    const [worst] = at(a, "front-left/alignment").reasons;
    expect(worst).toMatchObject({ grade: 2, towards: "more" });
    expect(worst?.text).toBe("camber −0.45°, −1.10° on the other side; they may differ by 0.40°, by its maker");
  });

  it("computes total toe and thrust from single toes: hand figures, thrust positive to the left", () => {
    const toes = (left: number, right: number) => [angle("rear-left", "toe", left), angle("rear-right", "toe", right)];
    const a = at(appraise([...straight, ...toes(0.1, 0.3)]), "rear/alignment");
    // Total 0.40, thrust (0.30 - 0.10) / 2 = 0.10 to the left; the rim of the Ouzel is 431.8 mm, 3.0 mm of toe over it.
    const rim = ouzel().rear.wheel.rimDiameter * 1000;
    const length = rim * (Math.sin(rad(0.1)) + Math.sin(rad(0.3)));
    expect(a.found).toBe(
      `total toe 0.40°, ${length.toFixed(1)} mm over a rim of ${rim.toFixed(0)} mm; the axle points 0.10° to the left`,
    );
    // Limit of the total 0.16 to 0.40: on it, too close to call. Thrust 0.10 against 0.05 with u 0.014: beyond.
    expect(a.reasons.map((r) => [r.about, r.judgement?.decision, r.grade])).toEqual([
      ["thrust", "beyond", 2],
      ["total-toe", "too close to call", 1],
    ]);
    expect(a.limitWords).toBe("limit 0.05° to either side, by its maker");
    expect(at(appraise([...straight, ...toes(0.3, 0.1)]), "rear/alignment").found).toContain("0.10° to the right");
    expect(at(appraise([...straight, ...toes(0.12, 0.12)]), "rear/alignment").found).toContain("straight ahead");
  });

  it("says what can be behind it, and does not set angles on a worn joint", () => {
    const wrong = [...straight, angle("rear-left", "toe", 0.4)];
    const open = at(appraise(wrong), "rear-left/alignment");
    expect(open.advice).toContain("Angles are never set on a worn joint");
    const torn = look("rear-left/toe-link/inner-bush", { kind: "signs", signs: ["web-torn"] });
    const worn = at(appraise([...wrong, torn]), "rear-left/alignment");
    expect(worn.means.find((m) => m.cause === "rear-toe-link-joint")).toMatchObject({ state: "found" });
    expect(worn.advice).toContain("Cure what was found first: rear toe link bush or joint worn");
    const sound = appraise([
      ...wrong,
      ...open.means.flatMap((m) =>
        m.places.filter((p) => !p.endsWith("ride-height")).map((place) => look(place, { kind: "nothing-seen" })),
      ),
    ]);
    expect(at(sound, "rear-left/alignment").advice).toMatch(/^Nothing worn was found: set it/);
  });

  it("without anything on file is not judged, never guessed, and says so", () => {
    const a = appraise([...straight, angle("front-left", "camber", -3)], { work: { ...onFile, alignment: [] } });
    const found = at(a, "front-left/alignment");
    expect([found.grade, found.notKnown]).toEqual([null, true]);
    expect(found.reasons[0]?.text).toBe("camber −3.00°, limit not on file");
    expect(found.howSure).toBe("Held against nothing: no limit on file.");
  });

  it("is marked where heights were not read or lie beyond their limit", () => {
    const wrong = angle("front-left", "camber", -1.6);
    expect(at(appraise([wrong]), "front-left/alignment").caveat).toContain("Heights were not read");
    const low = at(
      appraise([...heights(350, 372, 366, 366), angle("front-left", "camber", -2.2)]),
      "front-left/alignment",
    );
    expect(low.caveat).toContain("left ride height 350 mm");
    expect(low.means[0]).toMatchObject({ cause: "ride-height-wrong-for-the-settings", state: "found" });
    expect(at(appraise([...straight, wrong]), "front-left/alignment").caveat).toBeNull();
  });

  it("read after the work does not change how the car came", () => {
    const steps = [{ step: "s", doneBy: "I", at: "2026-03-12T12:00:00Z", hubToArch: null, torqueNm: null, note: null }];
    const after = { ...angle("front-left", "camber", -0.8), at: "2026-03-12T13:00:00Z" };
    const before = { ...angle("front-left", "camber", -1.6), at: "2026-03-12T09:00:00Z" };
    const a = appraise([...straight, before, after], { jobCard: { steps } });
    expect(at(a, "front-left/alignment").found).toBe("camber −1.60°");
  });
});

describe("pressures", () => {
  it("are held against what is on file, and the other side", () => {
    const bar = (corner: string, value: number) =>
      look(`${corner}/tyre/pressure`, reading("pressure", value * 1e5, 3e3));
    const a = appraise([bar("front-left", 1.8), bar("front-right", 2.3), bar("rear-left", 2.3)]);
    const low = at(a, "front-left/tyre/pressure");
    expect([low.grade, low.limitWords]).toEqual([2, "limit 2.1 bar to 2.6 bar, by its maker"]);
    expect(low.reasons[1]?.text).toContain("2.3 bar on the other side");
    expect(low.advice).toContain("what lets the air out");
    expect(at(a, "rear-left/tyre/pressure").reasons[0]?.text).toBe("pressure 2.3 bar, limit not on file");
  });
});

describe("readings and suspects", () => {
  const complaint = [
    {
      symptom: "wanders-needs-steady-correction",
      side: "unknown" as const,
      axle: "unknown" as const,
      conditions: { speedKmh: null, temperature: null, load: null, steering: null, braking: null },
      since: null,
    },
  ];
  const cures = (looks: Parameters<typeof record>[0]) =>
    findSuspects(complaint, appraise([...straight, ...looks]).findings).suspects.find(
      (s) => s.cause === "front-toe-out-of-setting",
    )?.cures ?? 0;

  it("raise what was measured out of its limits and lower what was measured within", () => {
    const toes = (left: number, right: number) => [
      angle("front-left", "toe", left),
      angle("front-right", "toe", right),
    ];
    const nothing = cures([]);
    expect(cures(toes(-0.2, -0.2))).toBeGreaterThan(nothing);
    expect(cures(toes(0.08, 0.08))).toBeLessThan(nothing);
    // Camber within its limits says nothing of toe.
    expect(cures([angle("front-left", "camber", -0.8)])).toBe(nothing);
  });
});

describe("how the car leaves", () => {
  const steps = [{ step: "s", doneBy: "I", at: "2026-03-12T12:00:00Z", hubToArch: null, torqueNm: null, note: null }];
  const later = (one: ReturnType<typeof look>) => ({ ...one, at: "2026-03-12T13:00:00Z" });
  const toes = (left: number, right: number) => [angle("rear-left", "toe", left), angle("rear-right", "toe", right)];

  it("stands beside how it came, each judged, total toe and thrust too", () => {
    const a = appraise([...straight, ...toes(0.4, 0.14), ...toes(0.13, 0.15).map(later)], { jobCard: { steps } });
    expect(a.asLeft.find((r) => r.place === "rear-left/alignment")).toMatchObject({
      foundDecision: "beyond",
      leftDecision: "within",
      limitWords: "limit 0.08° to 0.20°, by its maker",
    });
    const [axle] = a.axlesAsLeft;
    expect(axle?.asFound).toContain("0.13° to the right");
    expect(axle?.asLeft).toContain("0.01° to the left");
    expect(a.gates.some((g) => g.id === "as-left")).toBe(false);
  });

  it("holds the car where it leaves beyond a limit on file, and says which", () => {
    const a = appraise([...straight, ...toes(0.1, 0.1), ...toes(0.4, 0.14).map(later)], { jobCard: { steps } });
    const gate = a.gates.find((g) => g.id === "as-left");
    expect(gate?.state).toBe("open");
    expect(gate?.why).toContain("rear left: toe 0.40°, limit 0.08° to 0.20°, by its maker");
    expect(gate?.why).toContain("rear axle: the axle points 0.13° to the right");
    expect(at(a, "rear-left/alignment").found).toBe("toe 0.10°");
  });
});
