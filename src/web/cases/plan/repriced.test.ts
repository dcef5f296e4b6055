import { expect, test } from "vitest";
import type { VisitPlan } from "#casework";
import { compareRepriced, findTurn, isStillSo } from "./repriced.ts";

const plan = (...rows: readonly (readonly [id: string, visit: number | null, total: number | null])[]): VisitPlan =>
  ({
    visits: [{ label: "Now" }, { label: "Next service" }],
    remedies: rows.map(([id, visit, total]) => ({
      remedy: { id, label: `Remedy ${id}` },
      visit,
      price: total === null ? null : { total },
    })),
  }) as unknown as VisitPlan;

test("what stayed is left out, what has another price or visit is told with both", () => {
  const before = plan(["a", 0, 30_000], ["b", 0, 20_000], ["c", 0, 10_000], ["d", 0, 5000]);
  const after = plan(["a", null, null], ["b", 0, 21_500], ["c", 1, 10_000], ["d", 0, 5000]);
  expect(compareRepriced(before, after, ["a"])).toEqual([
    { id: "b", label: "Remedy b", before: 20_000, after: 21_500, movedTo: null },
    { id: "c", label: "Remedy c", before: 10_000, after: 10_000, movedTo: "Next service" },
  ]);
});

test("a visit set by hand is told with what it did, and no longer once a price it tells is another", () => {
  const before = plan(["a", 0, 30_000], ["b", 0, 20_000]);
  const after = plan(["a", 1, 30_000], ["b", 0, 24_000]);
  const none = { declined: [], fixed: [] };
  const turn = findTurn(
    { plan: before, planDocument: none },
    { plan: after, planDocument: { declined: [], fixed: [{ remedy: "a", visit: 1 }] } },
  );
  expect(turn).toEqual({
    words: "Set by hand to Next service: Remedy a.",
    repriced: [{ id: "b", label: "Remedy b", before: 20_000, after: 24_000, movedTo: null }],
  });
  if (turn === null) throw new Error("no turn");
  expect(isStillSo(turn, after)).toBe(true);
  expect(isStillSo(turn, plan(["a", 1, 30_000], ["b", 0, 33_000]))).toBe(false);
  expect(findTurn({ plan: before, planDocument: none }, { plan: after, planDocument: none })).toBeNull();
});
