import { describe, expect, it } from "vitest";
import { appraiseVisit } from "../../src/casework/cases/appraise.ts";
import { priceVisit } from "../../src/casework/cases/price-visit.ts";
import { usualPlan } from "../../src/casework/cases/usual-plan.ts";
import { symptoms } from "../../src/casework/suspects/symptom-table.ts";
import { findSuspects } from "../../src/casework/suspects/visit-suspects.ts";
import { look, rates, reading, record, solver, work } from "./made-visit.ts";

const at = (a: ReturnType<typeof appraiseVisit>, place: string) => {
  const found = a.findings.find((f) => f.place === place);
  if (!found) throw new Error(`no ${place}`);
  return found;
};

describe("judging places", () => {
  it("leaves what nobody looked at without a grade, and a look without signs sound", () => {
    const a = appraiseVisit(record([look("rear-left/toe-link/inner-bush", { kind: "nothing-seen" })]), solver);
    expect(at(a, "rear-left/toe-link/inner-bush").grade).toBe(0);
    expect(at(a, "rear-right/toe-link/inner-bush").grade).toBeNull();
    expect(a.notLookedAt).toBe(a.findings.length - 1);
  });

  it("raises a reading beyond a practice limit to plan at most, a torn web by itself to repair first", () => {
    const place = "rear-left/trailing-link/inner-bush";
    const practice = appraiseVisit(record([look(place, reading("lost-travel", 0.0046, 0.00025))]), solver);
    expect(at(practice, place).grade).toBe(2);
    expect(at(practice, place).limitWords).toContain("general practice");
    const torn = appraiseVisit(record([look(place, { kind: "signs", signs: ["web-torn"] })]), solver);
    expect(at(torn, place).grade).toBe(3);
    expect(at(torn, place).effect?.sentence).toContain("rear left wheel");
  });

  it("says too close to call between the guarded limits and no more than watch", () => {
    const place = "front-left/disc/thickness";
    const points = [22.03, 22.04, 22.04, 22.03].map((t, i) =>
      look(place, reading("thickness", t / 1000, 0.000025, String(i + 1))),
    );
    const found = at(appraiseVisit(record(points), solver), place);
    expect(found.closeToCall).toBe(true);
    expect(found.grade).toBe(1);
  });

  it("never holds a reading against a limit set for another state of load, and says so", () => {
    const place = "rear-left/trailing-link/inner-bush";
    const limits = work.limits.map((l) => (l.quantity === "lost-travel" ? { ...l, loadState: "hanging" as const } : l));
    const taken = (loadState: "standing" | "hanging") =>
      at(
        appraiseVisit(
          record([{ ...look(place, reading("lost-travel", 0.0046, 0.00025)), loadState }], {
            work: { ...work, limits },
          }),
          solver,
        ),
        place,
      );
    expect(taken("hanging").grade).toBe(2);
    const apart = taken("standing");
    expect([apart.grade, apart.notKnown]).toEqual([null, true]);
    expect(apart.limitWords).toBeNull();
    expect(apart.reasons[0]?.text).toMatch(
      /limit 3\.2 mm.* set for hanging: taken standing, so it is not held against it/,
    );
  });

  it("takes a withdrawn look back and a later nothing-seen over earlier signs", () => {
    const place = "rear-left/trailing-link/inner-bush";
    const torn = look(place, { kind: "signs", signs: ["web-torn"] });
    const withdrawn = appraiseVisit(record([torn, look(place, { kind: "withdrawn", look: torn.id })]), solver);
    expect(at(withdrawn, place).grade).toBeNull();
    const seenAgain = appraiseVisit(record([torn, look(place, { kind: "nothing-seen" })]), solver);
    expect(at(seenAgain, place).grade).toBe(0);
  });
});

describe("from findings to plan, job card and hand-over", () => {
  const torn = () => look("rear-left/trailing-link/inner-bush", { kind: "signs", signs: ["web-torn"] });
  const thin = () =>
    [1, 2, 3, 4].map((i) => look("front-left/disc/thickness", reading("thickness", 0.0215, 0.000005, String(i))));

  it("plans repair first now and shares the lift once: hand arithmetic", () => {
    const a = appraiseVisit(record([torn(), ...thin()]), solver);
    expect(a.remedies.map((r) => r.id)).toEqual(["front-discs@front", "trailing-bushes@rear"]);
    expect(a.plan.remedies.every((r) => r.visit === 0)).toBe(true);
    // Labour 2 x 1.0 + 2 x 0.8 own, 4 x 0.1 wheels, 0.2 lift = 4.2 h at 90.00; parts 2 x 40 + 2 x 90; visit 25.
    expect(a.plan.totals[0]).toBe(4.2 * 9000 + 8000 + 18_000 + 2500);
    const shown = a.plan.remedies.map((r) => r.price?.total ?? 0);
    expect(shown.reduce((x, y) => x + y, 0)).toBe(a.plan.totals[0]);
  });

  it("reprices the rest when one remedy is declined", () => {
    const both = appraiseVisit(record([torn(), ...thin()]), solver);
    const plan = { ...usualPlan(90_000), declined: ["front-discs@front"] };
    const one = appraiseVisit(record([torn(), ...thin()], { plan }), solver);
    const price = (a: typeof both) =>
      a.plan.remedies.find((r) => r.remedy.id === "trailing-bushes@rear")?.price?.total ?? 0;
    expect(price(one)).toBeGreaterThan(price(both));
    expect(price(one)).toBe(2 * 9000 + 2 * 900 + 1800 + 8000 + 2500);
    const bushes = both.remedies.filter((r) => r.id === "trailing-bushes@rear");
    expect(priceVisit(bushes, rates).total).toBe(price(one));
  });

  it("derives job card, box and gates from what is agreed, and holds the car until all is met", () => {
    const agreed = [{ remedy: "trailing-bushes@rear", by: "owner", at: "2026-03-12" }];
    const plan = { ...usualPlan(90_000), agreed };
    const open = appraiseVisit(record([torn()], { plan }), solver);
    expect(open.jobCard.hardware).toEqual([{ item: "bolt-m14", label: "Bolt M14 x 1.5", must: 2, may: 0 }]);
    const kinds = open.jobCard.steps.map((s) => s.kind);
    expect(kinds.indexOf("torque")).toBeGreaterThan(kinds.lastIndexOf("work"));
    expect(open.gates.filter((g) => g.state === "open").map((g) => g.id)).toEqual([
      "steps",
      "loaded-torque",
      "reteach",
      "road-test",
      "alignment",
      "as-left",
    ]);
    expect(open.reteach.find((r) => r.item === "Steering-angle zero")?.need).toBe("needed");
    const steps = open.jobCard.steps.map((s) => ({
      step: s.id,
      doneBy: "I. Marden",
      at: "2026-03-12T12:00:00Z",
      hubToArch: s.needsRideHeight ? 0.358 : null,
      torqueNm: null,
      note: null,
    }));
    const taught = open.reteach.map((r) => ({ item: r.item, state: "done" as const, by: "I. Marden" }));
    const after = ["front-left", "front-right", "rear-left", "rear-right"].map((corner) => ({
      ...look(`${corner}/alignment`, reading("toe", 0.002, 0.0003)),
      at: "2026-03-12T13:00:00Z",
    }));
    const done = appraiseVisit(
      record([torn(), ...after], {
        plan,
        jobCard: { steps },
        handOver: { overrides: [], taught, signedBy: null, signedAt: null, receivedBy: null },
      }),
      solver,
    );
    expect(done.gates.filter((g) => g.state === "open")).toEqual([]);
    const forgotten = steps.map((s) => ({ ...s, hubToArch: null }));
    const held = appraiseVisit(record([torn(), ...after], { plan, jobCard: { steps: forgotten } }), solver);
    expect(held.gates.find((g) => g.id === "loaded-torque")?.state).toBe("open");
  });

  it("marks the job line: what is missing blocks what follows", () => {
    const marks = appraiseVisit(record([]), solver).stages;
    expect(marks.find((m) => m.stage === "findings")).toEqual({
      stage: "findings",
      mark: "blocked",
      blockedBy: "needs Underside",
    });
    expect(
      appraiseVisit(record([], { family: null }), solver).stages.find((m) => m.stage === "readings")?.blockedBy,
    ).toBe("needs Car");
  });
});

describe("suspects of a visit", () => {
  const complaint = [
    {
      symptom: "pulls-under-braking",
      side: "left" as const,
      axle: "unknown" as const,
      conditions: { speedKmh: null, temperature: null, load: null, steering: null, braking: "firm" as const },
      since: null,
    },
  ];

  it("raises a cause that was seen and lowers what was looked at and is sound; all shares add up to one", () => {
    const before = findSuspects(complaint, appraiseVisit(record([]), solver).findings);
    const seen = findSuspects(
      complaint,
      appraiseVisit(record([look("front-left/lower-arm/rear-bush", { kind: "signs", signs: ["oil-trace"] })]), solver)
        .findings,
    );
    const cures = (s: typeof before, id: string) => s.suspects.find((x) => x.cause === id)?.cures ?? 0;
    expect(cures(seen, "hydraulic-bush-leaked")).toBeGreaterThan(cures(before, "hydraulic-bush-leaked"));
    expect(cures(seen, "caliper-piston-seized")).toBeLessThan(cures(before, "caliper-piston-seized"));
    const total = seen.suspects.reduce((sum, s) => sum + s.cures, 0) + seen.twoAtOnce + seen.somethingElse;
    expect(total).toBeCloseTo(1, 9);
  });

  const said = (cause: string, word: "accepted" | "ruled-out" | "open") => ({
    cause,
    word,
    reason: null,
    by: "MK",
    at: "2031-05-14T09:00:00Z",
  });
  const cures = (s: ReturnType<typeof findSuspects>, id: string) => s.suspects.find((x) => x.cause === id)?.cures ?? 0;

  it("takes what was ruled out as not there and what was accepted as there, and a later word back again", () => {
    const { findings } = appraiseVisit(record([]), solver);
    const free = findSuspects(complaint, findings);
    const lead = free.suspects[0]?.cause ?? "";
    const other = free.suspects[1]?.cause ?? "";
    const out = findSuspects(complaint, findings, [said(lead, "ruled-out")]);
    expect(cures(out, lead)).toBe(0);
    expect(cures(out, other)).toBeGreaterThan(cures(free, other));
    const total = out.suspects.reduce((sum, s) => sum + s.cures, 0) + out.twoAtOnce + out.somethingElse;
    expect(total).toBeCloseTo(1, 9);
    const taken = findSuspects(complaint, findings, [said(lead, "ruled-out"), said(other, "accepted")]);
    expect(taken.suspects[0]?.cause).toBe(other);
    expect(taken.suspects[0]?.there).toBeCloseTo(1, 12);
    const back = findSuspects(complaint, findings, [said(lead, "ruled-out"), said(lead, "open")]);
    expect(cures(back, lead)).toBe(cures(free, lead));
    expect(back.suspects.every((s) => s.word === null)).toBe(true);
  });

  it("tells of each answer what the chance would be without it", () => {
    const looks = [look("front-left/lower-arm/rear-bush", { kind: "signs", signs: ["oil-trace"] })];
    const before = findSuspects(complaint, appraiseVisit(record([]), solver).findings);
    const seen = findSuspects(complaint, appraiseVisit(record(looks), solver).findings);
    const suspect = seen.suspects.find((s) => s.cause === "hydraulic-bush-leaked");
    const own = suspect?.moves.find((m) => m.about === "hydraulic-bush-leaked");
    expect(own?.without).toBeCloseTo(cures(before, "hydraulic-bush-leaked"), 12);
    const odds = (p: number): number => p / (1 - p);
    expect(own?.times).toBeCloseTo(odds(suspect?.cures ?? 0) / odds(own?.without ?? 0), 9);
    expect(seen.suspects.find((s) => s.cause === "caliper-piston-seized")?.moves[0]?.times).toBeLessThan(1);
  });

  it("has what cures an accepted cause done now, though it only asks to be watched", () => {
    const looks = [look("rear-left/trailing-link/inner-bush", { kind: "signs", signs: ["surface-cracks"] })];
    const clunk = complaint.map((entry) => ({ ...entry, symptom: "clunk-over-bumps-rear" }));
    const enquiry = { words: "", symptoms: clunk, use: null };
    const free = appraiseVisit(record(looks, { enquiry }), solver);
    const before = free.plan.remedies.find((r) => r.remedy.id === "trailing-bushes@rear");
    expect(before?.visit).toBeNull();
    const suspects = [said("rear-trailing-bush", "accepted")];
    const taken = appraiseVisit(record(looks, { enquiry: { ...enquiry, suspects } }), solver);
    const after = taken.plan.remedies.find((r) => r.remedy.id === "trailing-bushes@rear");
    expect(after).toMatchObject({ visit: 0, why: expect.stringContaining("Accepted as the cause") });
  });

  it("says so where no complaint is chosen", () => {
    expect(findSuspects([], []).note).toContain("No complaint");
  });
});

describe("more complaints than can be worked through at once", () => {
  it("are worked through as far as they can be, and the others are named", () => {
    const entries = symptoms.slice(0, 16).map((s) => ({
      symptom: s.id,
      side: "unknown" as const,
      axle: "unknown" as const,
      conditions: { speedKmh: null, temperature: null, load: null, steering: null, braking: null },
      since: null,
    }));
    const answer = findSuspects(entries, []);
    expect(answer.leftOut).toEqual(symptoms.slice(14, 16).map((s) => s.label));
    expect(answer.suspects.length).toBeGreaterThan(10);
  });
});
