import { describe, expect, it } from "vitest";
import { combineComponents, computeExpanded, propagateCorrelated } from "./budget.ts";
import { budgetReading, findInstrument, instruments } from "./instruments.ts";
import {
  gradeCeiling,
  judgeAgainstLimit,
  judgeAgainstPast,
  judgeAgainstTwin,
  type OwnedLimits,
  type Reading,
} from "./judgement.ts";

const play: Reading = { value: 0.0011, u: 0.0001, loadState: "hanging" };
const limit: OwnedLimits = {
  lower: null,
  upper: 0.0005,
  owner: "maker",
  source: "a sheet",
  loadState: "hanging",
  grade: 3,
};

describe("three kinds of judgement", () => {
  it("against a limit: whose it is stands beside the decision", () => {
    const j = judgeAgainstLimit(play, limit, 0.95);
    expect(j).toMatchObject({
      against: "limit",
      owner: "maker",
      source: "a sheet",
      decision: "beyond",
      gradeBeyond: 3,
    });
  });

  it.each([
    ["maker", 4, 4],
    ["law", 4, 4],
    ["workshop", 3, 2],
    ["practice", 3, 2],
    ["memory", 4, 2],
    ["memory", 1, 1],
  ] as const)("a limit of %s with grade %d raises a finding to %d at most", (owner, grade, raised) => {
    const j = judgeAgainstLimit(play, { ...limit, owner, grade }, 0.95);
    expect(j).toMatchObject({ gradeBeyond: raised });
    expect(raised).toBeLessThanOrEqual(gradeCeiling(owner));
  });

  it("a limit beyond which the thing is dangerous by itself keeps its grade, whoever says it", () => {
    const j = judgeAgainstLimit(play, { ...limit, owner: "memory", grade: 4, byItself: true }, 0.95);
    expect(j).toMatchObject({ owner: "memory", gradeBeyond: 4 });
  });

  it("a reading in one state of load is never held against another", () => {
    const standing = { ...limit, loadState: "standing" };
    expect(judgeAgainstLimit(play, standing, 0.95)).toEqual({
      against: "limit",
      decision: null,
      reading: "hanging",
      other: "standing",
    });
    expect(judgeAgainstTwin(play, { ...play, loadState: "standing" }, 0.001, 0.95)).toMatchObject({ decision: null });
    expect(judgeAgainstPast(play, { ...play, loadState: "standing" }, 0.001, 0.95)).toMatchObject({ decision: null });
    expect(judgeAgainstLimit({ ...play, loadState: null }, standing, 0.95)).toMatchObject({ decision: "beyond" });
    expect(judgeAgainstLimit(play, { ...limit, loadState: null }, 0.95)).toMatchObject({ decision: "beyond" });
  });

  it("against the twin: the difference carries both uncertainties", () => {
    // Heights of two sides, 8 mm apart, each +-2 mm: u = sqrt 2 mm; 12 mm allowed, so z = 4 / 1.414 = 2.828.
    const left: Reading = { value: 0.641, u: 0.001, loadState: null };
    const j = judgeAgainstTwin(left, { ...left, value: 0.633 }, 0.012, 0.95);
    expect(j).toMatchObject({ against: "twin", decision: "within" });
    if (j.decision === null) throw new Error("not comparable");
    expect(j.u).toBeCloseTo(0.001 * Math.SQRT2, 12);
    expect(j.probabilityWithin).toBeCloseTo(0.997661, 6);
    expect(judgeAgainstTwin(left, { ...left, value: 0.63 }, 0.012, 0.95)).toMatchObject({
      decision: "too close to call",
    });
    expect(judgeAgainstTwin(left, { ...left, value: 0.62 }, 0.012, 0.95)).toMatchObject({ decision: "beyond" });
  });

  it("against its own past: the change, now less then", () => {
    const then: Reading = { value: 0.0004, u: 0.0001, loadState: "hanging" };
    const j = judgeAgainstPast(play, then, 0.0002, 0.95);
    expect(j).toMatchObject({ against: "past", decision: "beyond" });
    if (j.decision === null || j.against !== "past") throw new Error("not comparable");
    expect(j.change).toBeCloseTo(0.0007, 15);
  });
});

describe("budgets", () => {
  it("a reading: display and repetition in squares", () => {
    const gauge = findInstrument("dial-gauge");
    if (!gauge) throw new Error("no gauge");
    // 0.01/sqrt 12 mm and 0.01 mm.
    expect(budgetReading(gauge, 0.00005).u).toBeCloseTo(1e-3 * Math.hypot(0.0028867513, 0.01), 12);
    const wrench = findInstrument("torque-wrench");
    if (!wrench) throw new Error("no wrench");
    expect(budgetReading(wrench, 100).u).toBeCloseTo(Math.hypot(1 / Math.sqrt(12), 2), 9);
    expect(findInstrument("plumb-line")).toBeNull();
  });

  it("instruments: a key once each, and a worth above nought", () => {
    expect(new Set(instruments.map((i) => i.key)).size).toBe(instruments.length);
    for (const i of instruments) expect(budgetReading(i, 10).u).toBeGreaterThan(0);
  });

  it("shares of the variance add to one; nothing uncertain has no u", () => {
    const b = combineComponents([
      { name: "a", u: 3 },
      { name: "b", u: 2, sensitivity: -2, degreesOfFreedom: 4 },
    ]);
    expect(b.u).toBe(5);
    for (const [i, share] of [0.36, 0.64].entries()) expect(b.parts[i]?.share).toBeCloseTo(share, 15);
    // Only b counts: (16/25)^2 / 4.
    expect(b.degreesOfFreedom).toBeCloseTo(4 / 0.64 ** 2, 12);
    expect(combineComponents([{ name: "a", u: 0 }])).toMatchObject({
      u: 0,
      degreesOfFreedom: Number.POSITIVE_INFINITY,
    });
    expect(computeExpanded(combineComponents([{ name: "a", u: 2 }]), 0.95).plusMinus).toBeCloseTo(3.919928, 6);
  });

  it("fully correlated causes of opposite effect cancel", () => {
    const out = propagateCorrelated(
      [
        [1, -1],
        [1, 1],
      ],
      [2, 2],
      [
        [1, 1],
        [1, 1],
      ],
    );
    expect(out.u).toEqual([0, 4]);
    expect(out.correlation[0]).toEqual([0, 0]);
  });
});
