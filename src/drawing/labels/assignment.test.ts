import { describe, expect, it } from "vitest";
import { solveAssignment } from "./assignment.ts";

/** A small generator with a fixed seed (numbers of the Park-Miller generator, from memory). */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

/** Least cost over all ways to give rows different columns. */
function leastByTrial(cost: readonly (readonly number[])[], row = 0, taken: readonly number[] = []): number {
  const own = cost[row];
  if (own === undefined) return 0;
  return Math.min(
    ...own.map((price, column) =>
      taken.includes(column) ? Number.POSITIVE_INFINITY : price + leastByTrial(cost, row + 1, [...taken, column]),
    ),
  );
}

describe("solveAssignment", () => {
  it("gives every row its own column at the least cost that trying all ways finds", () => {
    const random = seeded(11);
    for (let round = 0; round < 40; round++) {
      const rows = 1 + Math.floor(random() * 5);
      const columns = rows + Math.floor(random() * 3);
      const cost = Array.from({ length: rows }, () => Array.from({ length: columns }, random));
      const chosen = solveAssignment(cost);
      expect(new Set(chosen).size).toBe(rows);
      const sum = chosen.reduce((total, column, row) => total + (cost[row]?.[column] ?? Number.NaN), 0);
      expect(sum).toBeCloseTo(leastByTrial(cost), 9);
    }
  });

  it("refuses more rows than columns", () => {
    expect(() => solveAssignment([[1], [2]])).toThrow(/columns/);
  });
});
