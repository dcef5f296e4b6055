import { describe, expect, it } from "vitest";
import { appraiseVisit } from "../../src/casework/cases/appraise.ts";
import { look, reading, record, solver } from "./made-visit.ts";

const TREAD = "front-left/tyre/tread";
const tyre = (inner: number, middle: number, outer: number) =>
  Object.entries({ inner, middle, outer }).map(([point, mm]) =>
    look(TREAD, reading("tread", mm / 1000, 0.0001, point)),
  );
const found = (...mm: readonly [number, number, number]) => {
  const finding = appraiseVisit(record(tyre(...mm)), solver).findings.find((f) => f.place === TREAD);
  return { grade: finding?.grade, across: finding?.reasons.find((r) => r.text.includes("inner")) };
};

describe("three points of one tyre", () => {
  it.each([
    [2.4, 4.6, 5.2, "worn more at the inner edge"],
    [5.2, 4.6, 2.4, "worn more at the outer edge"],
    [5.4, 3, 5.2, "worn more in the middle"],
    [3, 5.6, 3.2, "worn more at both edges"],
  ] as const)("%f, %f, %f mm: %s, to be planned by a practice limit", (inner, middle, outer, says) => {
    const { grade, across } = found(inner, middle, outer);
    expect(grade).toBe(2);
    expect(across?.text).toContain(says);
    expect(across?.text).toContain(`inner ${inner.toFixed(1)} mm, middle ${middle.toFixed(1)} mm`);
    expect(across?.limit).toBe("limit 1.5 mm apart, general practice");
  });

  it("worn alike are sound, and near the limit too close to call", () => {
    expect(found(5, 5.3, 5.1)).toMatchObject({ grade: 0, across: { grade: 0, closeToCall: false } });
    expect(found(5, 5.3, 6.5).across).toMatchObject({ closeToCall: true });
  });

  it("say nothing of each other where one was not read", () => {
    const two = tyre(2.4, 4.6, 5.2).slice(0, 2);
    const finding = appraiseVisit(record(two), solver).findings.find((f) => f.place === TREAD);
    expect(finding?.reasons.some((r) => r.text.includes("apart"))).toBe(false);
  });
});
