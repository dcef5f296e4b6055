import { describe, expect, it } from "vitest";
import { decideConformity } from "./conformity.ts";
import { computeNormalQuantile, computeShares } from "./normal.ts";
import { computeStudentProbability, computeStudentQuantile } from "./student.ts";

describe("guarded decision", () => {
  it.each([
    [{ lower: 22, upper: null }, 0.012, 0.95],
    [{ lower: null, upper: 0.05 }, 0.004, 0.99],
    [{ lower: -0.05, upper: 0.25 }, 0.03, 0.95],
    [{ lower: 0, upper: 1 }, 0.25, 0.95],
  ])("limits %j with u = %d at %d: the acceptance range is where the decision is within", (limits, u, confidence) => {
    const { acceptFrom, acceptTo } = decideConformity({ value: 0, u }, limits, confidence);
    for (const [end, out] of [
      [acceptFrom, -1],
      [acceptTo, 1],
    ] as const) {
      if (end === null) continue;
      const at = (value: number) => decideConformity({ value, u }, limits, confidence);
      expect(at(end).decision).toBe("within");
      expect(at(end).probabilityWithin).toBeCloseTo(confidence, 11);
      expect(at(end + out * u * 1e-6).decision).toBe("too close to call");
      expect(at(end + out * u * 10).decision).toBe("beyond");
    }
    expect([acceptFrom === null, acceptTo === null]).toEqual([limits.lower === null, limits.upper === null]);
  });

  it("two limits far apart guard each side as one alone would", () => {
    const both = decideConformity({ value: 0, u: 0.1 }, { lower: -5, upper: 5 }, 0.95);
    expect(both.acceptFrom).toBeCloseTo(-5 + 0.1 * computeNormalQuantile(0.95), 12);
    expect(both.acceptTo).toBeCloseTo(5 - 0.1 * computeNormalQuantile(0.95), 12);
  });

  it("limits nearer together than the reading can tell accept nothing", () => {
    const narrow = decideConformity({ value: 0, u: 1 }, { lower: -1, upper: 1 }, 0.95);
    expect(narrow).toMatchObject({ canAccept: false, acceptFrom: null, acceptTo: null, decision: "too close to call" });
  });

  it("without uncertainty the limits themselves decide, and on the limit is within", () => {
    const at = (value: number) => decideConformity({ value, u: 0 }, { lower: 1, upper: 2 }, 0.95).decision;
    expect([0.999, 1, 1.5, 2, 2.001].map(at)).toEqual(["beyond", "within", "within", "within", "beyond"]);
  });

  it("keeps the digits of small chances on either side", () => {
    expect(computeShares({ value: 0, u: 1 }, { lower: 8, upper: null }).within).toBeCloseTo(6.220960574271785e-16, 28);
    expect(computeShares({ value: 0, u: 1 }, { lower: null, upper: -8 }).within).toBeCloseTo(6.220960574271785e-16, 28);
    expect(computeShares({ value: 0, u: 1 }, { lower: -8, upper: 8 }).above).toBeCloseTo(6.220960574271785e-16, 28);
  });
});

describe("quantiles", () => {
  it("the normal one inverts the distribution down to 1e-300", () => {
    for (const p of [1e-300, 1e-12, 0.001, 0.3, 0.5, 0.7, 0.999, 1 - 1e-12]) {
      expect(
        computeShares({ value: 0, u: 1 }, { lower: null, upper: computeNormalQuantile(p) }).within / p,
      ).toBeCloseTo(1, 11);
    }
    expect(computeNormalQuantile(0)).toBe(Number.NEGATIVE_INFINITY);
    expect(computeNormalQuantile(1)).toBe(Number.POSITIVE_INFINITY);
    expect(computeNormalQuantile(1.1)).toBeNaN();
  });

  // Any table of Student's distribution; two-sided.
  it.each([
    [0.95, 1, 12.7062047],
    [0.95, 2, 4.3026527],
    [0.95, 10, 2.2281389],
    [0.99, 16, 2.9207816],
    [0.99, 25, 2.7874358],
    [0.95, 1e6, 1.9599664],
    [0.95, Number.POSITIVE_INFINITY, 1.959964],
  ])("Student's at %d with %d degrees of freedom", (share, degrees, t) => {
    expect(computeStudentQuantile(share, degrees)).toBeCloseTo(t, 5);
    expect(computeStudentProbability(t, degrees)).toBeCloseTo(share, 6);
  });
});
