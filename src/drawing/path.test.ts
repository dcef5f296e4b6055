import { describe, expect, it } from "vitest";
import { clipOutline } from "./corner/corner-frame.ts";
import { capsulePath, circlePath, formatNumber, polygon, roundedPolygon } from "./path.ts";

describe("path data", () => {
  it("writes numbers short, and never a negative nothing", () => {
    expect(formatNumber(-0.0001)).toBe("0");
    expect(formatNumber(12.3456)).toBe("12.35");
    expect(
      polygon([
        [0, 0],
        [1.5, 0],
        [0, 2],
      ]),
    ).toBe("M0 0L1.5 0L0 2z");
    expect(polygon([])).toBe("");
  });

  it("makes a bar of no length a circle, so that a joint without an arm is still drawn", () => {
    expect(capsulePath([4, 4], [4, 4], 2)).toBe(circlePath([4, 4], 2));
  });

  it("keeps rounded corners inside short sides", () => {
    const numbers = roundedPolygon(
      [
        [0, 0],
        [2, 0],
        [2, 2],
        [0, 2],
      ],
      50,
    )
      .match(/-?\d+(\.\d+)?/g)
      ?.map(Number);
    for (const value of numbers ?? []) {
      expect(value).toBeGreaterThanOrEqual(0);
      expect(value).toBeLessThanOrEqual(2);
    }
  });
});

describe("clipOutline", () => {
  it("cuts an outline where the sheet ends and keeps what lies outside of the middle", () => {
    const half = clipOutline(
      [
        [1, -1],
        [1, 1],
        [-1, 1],
        [-1, -1],
      ],
      0.5,
    );
    expect(half.every(([, y]) => y >= 0.5)).toBe(true);
    expect(half).toContainEqual([1, 0.5]);
    expect(half).toContainEqual([-1, 0.5]);
    expect(
      clipOutline(
        [
          [1, -1],
          [-1, -1],
          [0, -2],
        ],
        0,
      ),
    ).toEqual([]);
  });
});
