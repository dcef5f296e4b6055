import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Spot } from "../path.ts";
import { boxesOverlap, type Segment } from "./crossing.ts";
import { countCrossings, type LabelColumn, type PlacedLabel, placeInColumn, placeInColumns } from "./place-labels.ts";

const SEED = { seed: 20, numRuns: 300 };
const column = (side: "left" | "right"): LabelColumn => ({
  side,
  kneeX: side === "left" ? 0 : 400,
  top: 0,
  bottom: 600,
  portOffset: 20,
});
/** Points between the columns, no two on one height or in one line by chance of the grid. */
const points = (most: number) =>
  fc.array(
    fc.record({ x: fc.double({ min: 20, max: 380, noNaN: true }), y: fc.double({ min: 0, max: 600, noNaN: true }) }),
    {
      minLength: 1,
      maxLength: most,
    },
  );

const leaders = (placed: readonly PlacedLabel[], at: ReadonlyMap<string, Spot>): readonly Segment[] =>
  placed.map(({ id, knee }) => [knee, at.get(id) ?? knee]);

describe("labels beside a drawing", { timeout: 60_000 }, () => {
  it("of one height in two columns never overlap, and their leaders never cross", () => {
    fc.assert(
      fc.property(points(24), (list) => {
        const requests = list.map(({ x, y }, i) => ({ id: String(i), point: [x, y] as const, height: 48 }));
        const { placed, left } = placeInColumns(requests, [column("left"), column("right")]);
        expect(placed.length + left.length).toBe(requests.length);
        expect(left).toHaveLength(Math.max(0, requests.length - 24));
        const boxes = placed.map(({ side, top }) => ({
          x: side === "left" ? -100 : 400,
          y: top,
          width: 100,
          height: 48,
        }));
        for (const [i, box] of boxes.entries()) {
          expect(box.y).toBeGreaterThanOrEqual(-1e-6);
          expect(box.y + box.height).toBeLessThanOrEqual(600 + 1e-6);
          for (const other of boxes.slice(i + 1)) expect(boxesOverlap(box, other)).toBe(false);
        }
        const at = new Map(requests.map(({ id, point }) => [id, point]));
        expect(countCrossings(leaders(placed, at))).toBe(0);
      }),
      SEED,
    );
  });

  it("of any height in one column never overlap, keep inside it, and their leaders never cross", () => {
    const heights = fc.array(fc.integer({ min: 48, max: 110 }), { minLength: 7, maxLength: 7 });
    fc.assert(
      fc.property(points(7), heights, (list, tall) => {
        const requests = list.map(({ x, y }, i) => ({ id: String(i), point: [x, y] as const, height: tall[i] ?? 48 }));
        const { placed, left } = placeInColumn(requests, column("right"));
        expect(placed.length + left.length).toBe(requests.length);
        const sorted = placed.toSorted((a, b) => a.top - b.top);
        const heightOf = (id: string) => requests.find((request) => request.id === id)?.height ?? 0;
        for (const [i, { id, top }] of sorted.entries()) {
          const next = sorted[i + 1]?.top ?? 600;
          expect(top).toBeGreaterThanOrEqual(-1e-6);
          expect(top + heightOf(id)).toBeLessThanOrEqual(next + 1e-6);
        }
        const at = new Map(requests.map(({ id, point }) => [id, point]));
        expect(countCrossings(leaders(placed, at))).toBe(0);
      }),
      SEED,
    );
  });
});
