import { describe, expect, it } from "vitest";
import { boxesOverlap, distanceToSegment, segmentsCross } from "./crossing.ts";
import { placeInColumn } from "./place-labels.ts";

describe("placing labels", () => {
  it("puts a label at the height of its point where there is room", () => {
    const column = { side: "right", kneeX: 100, top: 0, bottom: 400, portOffset: 10 } as const;
    const requests = [
      { id: "low", point: [50, 300] as const, height: 48 },
      { id: "high", point: [60, 100] as const, height: 48 },
    ];
    const { placed } = placeInColumn(requests, column);
    expect(placed.find(({ id }) => id === "low")?.knee).toEqual([100, 300]);
    expect(placed.find(({ id }) => id === "high")?.top).toBe(90);
  });

  it("leaves out the last ones asked for where the column is full", () => {
    const column = { side: "left", kneeX: 0, top: 0, bottom: 100, portOffset: 10 } as const;
    const requests = ["a", "b", "c"].map((id, i) => ({ id, point: [30, 20 * i] as const, height: 50 }));
    expect(placeInColumn(requests, column).left).toEqual(["c"]);
  });
});

describe("crossing", () => {
  it("tells segments that cut each other from such that only touch", () => {
    expect(
      segmentsCross(
        [
          [0, 0],
          [2, 2],
        ],
        [
          [0, 2],
          [2, 0],
        ],
      ),
    ).toBe(true);
    expect(
      segmentsCross(
        [
          [0, 0],
          [2, 2],
        ],
        [
          [2, 2],
          [4, 0],
        ],
      ),
    ).toBe(false);
    expect(
      segmentsCross(
        [
          [0, 0],
          [1, 0],
        ],
        [
          [0, 1],
          [1, 1],
        ],
      ),
    ).toBe(false);
  });

  it("tells boxes that share area from such that share a side", () => {
    const box = { x: 0, y: 0, width: 10, height: 10 };
    expect(boxesOverlap(box, { ...box, x: 9 })).toBe(true);
    expect(boxesOverlap(box, { ...box, x: 10 })).toBe(false);
  });

  it("measures to the nearer end where the foot lies outside the segment", () => {
    expect(
      distanceToSegment(
        [3, 4],
        [
          [0, 0],
          [0, 0],
        ],
      ),
    ).toBe(5);
    expect(
      distanceToSegment(
        [5, 5],
        [
          [0, 0],
          [10, 0],
        ],
      ),
    ).toBe(5);
    expect(
      distanceToSegment(
        [13, 4],
        [
          [0, 0],
          [10, 0],
        ],
      ),
    ).toBe(5);
  });
});
