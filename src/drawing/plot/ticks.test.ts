import { describe, expect, it } from "vitest";
import { formatSigned, niceAxis } from "./ticks.ts";

describe("niceAxis", () => {
  it("holds all values and keeps its round ticks inside", () => {
    const axis = niceAxis([-0.13, 0.94], 5);
    expect(axis.low).toBeLessThan(-0.13);
    expect(axis.high).toBeGreaterThan(0.94);
    for (const tick of axis.ticks) {
      expect(tick).toBeGreaterThanOrEqual(axis.low);
      expect(tick).toBeLessThanOrEqual(axis.high);
    }
    expect(axis.words).toEqual(["0", "0.2", "0.4", "0.6", "0.8"]);
  });

  it("gives ticks the decimals their step needs and a true minus sign", () => {
    expect(niceAxis([-4, 0], 4).words).toEqual(["−4", "−3", "−2", "−1", "0"]);
    expect(niceAxis([0, 0.1], 4).words).toContain("0.02");
  });

  it("makes an axis of a single value, and of none", () => {
    const one = niceAxis([3], 4);
    expect(one.high - one.low).toBeCloseTo(1, 9);
    expect(niceAxis([], 4).ticks.length).toBeGreaterThan(0);
    expect(niceAxis([Number.NaN, 2, 5], 3).low).toBeLessThan(2);
  });
});

describe("formatSigned", () => {
  it("never writes a minus before nothing", () => {
    expect(formatSigned(-0.001, 2)).toBe("0.00");
    expect(formatSigned(-0.32, 2)).toBe("−0.32");
  });
});
