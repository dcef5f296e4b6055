import { describe, expect, it } from "vitest";
import { appraiseVisit } from "../../src/casework/cases/appraise.ts";
import type { HandOverDocument, StepRecord } from "../../src/casework/cases/documents.ts";
import { secondsOf } from "../../src/casework/cases/moment.ts";
import { usualPlan } from "../../src/casework/cases/usual-plan.ts";
import { look, rates, reading, record, solver } from "./made-visit.ts";

const at = "2026-03-12T12:00:00Z";
const agreed = ["trailing-bushes@rear", "front-discs@front"].map((remedy) => ({ remedy, by: "owner", at }));
const plan = { ...usualPlan(90_000), agreed };
const torn = () => look("rear-left/trailing-link/inner-bush", { kind: "signs", signs: ["web-torn"] });
const thin = () =>
  [1, 2, 3, 4].map((i) => look("front-left/disc/thickness", reading("thickness", 0.0215, 0.000005, String(i))));
const toe = (moment: string) => ({
  ...look("rear-left/alignment", { kind: "reading", quantity: "toe", value: 0.002, u: 0.0003, point: null }),
  at: moment,
});
const toes = (moment: string) =>
  ["front-left", "front-right", "rear-left", "rear-right"].map((corner) => ({
    ...toe(moment),
    id: `${corner}-${moment}`,
    place: `${corner}/alignment`,
  }));
const height = (moment: string, value: number) => ({
  ...look("rear-left/ride-height", reading("ride-height", value, 0.001)),
  at: moment,
});
const found = [torn(), ...thin()];
const card = appraiseVisit(record(found, { plan }), solver);
const signed: readonly StepRecord[] = card.jobCard.steps.map((s) => ({
  step: s.id,
  doneBy: "I. Marden",
  at,
  hubToArch: s.needsRideHeight ? 0.358 : null,
  torqueNm: null,
  note: null,
}));
const taught = card.reteach.map((r) => ({ item: r.item, state: "done" as const, by: "I. Marden" }));
const handOver: HandOverDocument = { overrides: [], taught, signedBy: null, signedAt: null, receivedBy: null };
const after = toes("2026-03-12T13:00:00Z");

/** Ids of the checks that hold the car. */
const open = (change: Parameters<typeof record>[1], looks = [...found, ...after]): readonly string[] =>
  appraiseVisit(record(looks, { plan, jobCard: { steps: signed }, handOver, ...change }), solver)
    .gates.filter((g) => g.state === "open")
    .map((g) => g.id);
const without = (step: string): Parameters<typeof record>[1] => ({
  jobCard: { steps: signed.filter((s) => s.step !== step) },
});

describe("checks that hold the car, each by itself", () => {
  it("hold nothing where all is met", () => {
    expect(open({})).toEqual([]);
    expect(card.gates.map((g) => g.id)).toEqual([
      "steps",
      "loaded-torque",
      "do-not-drive",
      "reteach",
      "pedal",
      "road-test",
      "alignment",
      "as-left",
    ]);
  });

  it("a step that is not signed", () => {
    expect(open(without("before/heights"))).toEqual(["steps"]);
  });

  it("a final torque without the height it was given at", () => {
    const steps = signed.map((s) => ({ ...s, hubToArch: null }));
    expect(open({ jobCard: { steps } })).toEqual(["loaded-torque"]);
  });

  it("a place that forbids driving and is not cured", () => {
    const worn = look("rear-right/tyre/tread", { kind: "signs", signs: ["cord-seen"] });
    expect(open({}, [...found, { ...worn, at: "2026-03-12T09:00:00Z" }, ...after])).toEqual(["do-not-drive"]);
  });

  it("something to be taught anew that nobody has spoken of", () => {
    expect(open({ handOver: { ...handOver, taught: taught.slice(1) } })).toEqual(["reteach"]);
  });

  it("a pedal nobody has felt", () => {
    expect(open(without("close/pedal"))).toEqual(["steps", "pedal"]);
  });

  it("a road test that was not driven", () => {
    expect(open(without("after/road-test"))).toEqual(["steps", "road-test"]);
  });

  it("alignment that was read before the work only, whatever the offset of the clock", () => {
    expect(open({}, found)).toEqual(["alignment", "as-left"]);
    expect(open({}, [...found, ...toes("2026-03-12T13:30:00+02:00")])).toEqual(["alignment", "as-left"]);
    expect(open({}, [...found, ...toes("2026-03-12T11:30:00-02:00")])).toEqual([]);
  });

  it("are passed over with a reason and a name, and say so", () => {
    const overrides = [{ gate: "alignment", reason: "rack is out", by: "I. Marden", at }];
    const a = appraiseVisit(
      record(found, { plan, jobCard: { steps: signed }, handOver: { ...handOver, overrides } }),
      solver,
    );
    const gate = a.gates.find((g) => g.id === "alignment");
    expect(gate).toMatchObject({ state: "passed-over", why: "rack is out, I. Marden" });
  });
});

describe("checks say what they stand on", () => {
  const gateOf = (id: string, looks: Parameters<typeof record>[0], change: Parameters<typeof record>[1]) =>
    appraiseVisit(record(looks, change), solver).gates.find((g) => g.id === id);

  it("nobody looked at the car, so nobody knows whether anything forbids driving", () => {
    expect(gateOf("do-not-drive", [], { plan })).toMatchObject({
      label: "Somebody looked for what forbids driving",
      state: "open",
      why: "nothing on this car was looked at",
    });
    expect(gateOf("do-not-drive", found, { plan })).toMatchObject({
      label: "Nothing is left that forbids driving",
      state: "met",
    });
  });

  it("nothing signed meets nothing", () => {
    expect(gateOf("loaded-torque", found, { plan })).toMatchObject({
      state: "open",
      why: "2 of 2 not signed with a height",
    });
    expect(gateOf("as-left", found, { plan })).toMatchObject({ state: "open", why: "nothing was read after the work" });
  });

  it("no job card holds the car while findings ask for work, and does not apply where nothing does", () => {
    const asked = appraiseVisit(record(found), solver).gates;
    expect(asked.find((g) => g.id === "steps")).toMatchObject({
      state: "open",
      why: expect.stringContaining("no step"),
    });
    expect(asked.find((g) => g.id === "repair-first")?.why).toBe("Front discs, Trailing link bushes");
    const quiet = appraiseVisit(record([]), solver).gates.map((g) => [g.id, g.state]);
    expect(quiet).toEqual([
      ["steps", "does-not-apply"],
      ["loaded-torque", "does-not-apply"],
      ["do-not-drive", "open"],
      ["reteach", "does-not-apply"],
    ]);
  });

  it("with nothing on file it is not called met", () => {
    const change = { plan, jobCard: { steps: signed }, handOver };
    expect(gateOf("as-left", [...found, ...after], change)).toMatchObject({ state: "not-on-file" });
  });

  it("a height far from where the car stands, as left before as found", () => {
    const change = { plan, jobCard: { steps: signed } };
    const early = height("2026-03-12T09:00:00Z", 0.372);
    const why = gateOf("loaded-torque", [early, ...found, ...after], change)?.why;
    expect(why).toBe("rear left: signed at 358 mm, the car stands at 372 mm; they may differ by 10 mm, from memory");
    const late = height("2026-03-12T13:00:00Z", 0.36);
    expect(gateOf("loaded-torque", [early, ...found, ...after, late], change)?.state).toBe("met");
  });

  it("alignment without one wheel names it", () => {
    const change = { plan, jobCard: { steps: signed } };
    expect(gateOf("alignment", [...found, ...after.slice(0, 3)], change)).toMatchObject({
      state: "open",
      why: "not read after the last signed work: Rear right, toe",
    });
  });
});

describe("a reading as left", () => {
  const agreedAt = { ...plan, agreed: plan.agreed.map((a) => ({ ...a, at: "2026-03-12T10:00:00Z" })) };
  const rows = (looks: Parameters<typeof record>[0]) =>
    appraiseVisit(record([...looks, ...found], { plan: agreedAt }), solver).asLeft.map((r) => [r.asFound, r.asLeft]);

  it("is told by when it was taken, not by its value: again after the owner agreed", () => {
    expect(rows([height("2026-03-12T09:00:00Z", 0.36), height("2026-03-12T11:00:00Z", 0.36)])).toEqual([[0.36, 0.36]]);
    expect(rows([height("2026-03-12T09:00:00Z", 0.36), height("2026-03-12T09:30:00Z", 0.36)])).toEqual([[0.36, null]]);
  });

  it("is not the first of its kind while no work is signed", () => {
    expect(rows([height("2026-03-12T11:00:00Z", 0.36)])).toEqual([[0.36, null]]);
  });
});

describe("the job card after the work", () => {
  it("keeps what was agreed to when its cure has been looked at, and still takes up what is found elsewhere", () => {
    const cured = {
      ...look("rear-left/trailing-link/inner-bush", { kind: "nothing-seen" }),
      at: "2026-03-12T12:30:00Z",
    };
    const fresh = {
      ...look("rear-right/toe-link/inner-bush", { kind: "signs", signs: ["deep-cracks"] }),
      at: cured.at,
    };
    const a = appraiseVisit(record([...found, cured, fresh], { plan, jobCard: { steps: signed }, rates }), solver);
    expect(a.jobCard.steps.map((s) => s.id)).toEqual(card.jobCard.steps.map((s) => s.id));
    expect(a.findings.find((f) => f.place === "rear-right/toe-link/inner-bush")?.grade).toBe(2);
  });

  it("shows as left beside as found", () => {
    const a = appraiseVisit(
      record([toe("2026-03-12T08:00:00Z"), ...found, toe("2026-03-12T13:00:00Z")], {
        plan,
        jobCard: { steps: signed },
      }),
      solver,
    );
    expect(a.asLeft).toMatchObject([{ place: "rear-left/alignment", quantity: "toe", asFound: 0.002, asLeft: 0.002 }]);
  });
});

describe("moments", () => {
  it("are put in order whatever their offset, as the calendar has them", () => {
    for (const moment of ["2031-05-14T09:30:00+02:00", "2032-02-29T23:59:59.5Z", "1999-12-31T22:00:00-05:30"])
      expect(secondsOf(moment) - secondsOf("1970-01-01T00:00:00Z")).toBeCloseTo(Date.parse(moment) / 1000, 6);
    expect(secondsOf("2031-05-14")).toBe(secondsOf("2031-05-14T00:00:00Z"));
    expect(secondsOf("yesterday")).toBeNaN();
  });
});
