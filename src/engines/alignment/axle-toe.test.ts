import { describe, expect, it } from "vitest";
import { radiansFromDegrees as rad } from "#quantity";
import { computeAxleToe, computeToeAngle, computeToeLength } from "./axle-toe.ts";

describe("toe as a length", () => {
  it("goes there and back", () => {
    for (const degrees of [-1, 0, 0.1, 2])
      expect(computeToeAngle(computeToeLength(rad(degrees), 0.4), 0.4)).toBeCloseTo(rad(degrees), 15);
  });

  it("has no angle where it is longer than the rim is wide", () => {
    expect(computeToeAngle(0.5, 0.4)).toBeNull();
  });
});

describe("an axle", () => {
  it("points left where the right wheel toes in more, and changes sides with its wheels", () => {
    const one = computeAxleToe(rad(0.05), rad(0.25), 0.4);
    const other = computeAxleToe(rad(0.25), rad(0.05), 0.4);
    expect(one.thrust).toBeCloseTo(rad(0.1), 15);
    expect(other.thrust).toBe(-one.thrust);
    expect(other.total).toBe(one.total);
    expect(other.totalLength).toBe(one.totalLength);
    expect(one.totalLength).toBeCloseTo(0.4 * (Math.sin(rad(0.05)) + Math.sin(rad(0.25))), 15);
  });
});
