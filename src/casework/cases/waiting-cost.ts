import { type Cents, closeOperations, evaluatePlan, type PlanInstance, type VisitChoice } from "#engines/planning";

/** One remedy done at another visit than planned, everything else as planned. */
export interface Alternative {
  /** Index of the visit; null: not within this plan. */
  readonly visit: number | null;
  /** What the whole plan is then expected to cost, risk of failure included. */
  readonly cost: Cents;
}

/** An instance without what forbids a visit, so that what is not advised has a cost too. */
const relaxed = (instance: PlanInstance): PlanInstance => ({
  ...instance,
  parts: instance.parts.map((p) => ({
    ...p,
    mustNow: false,
    maxAge: null,
    onlyAt: null,
    wear: p.wear && { ...p.wear, mostRisk: null },
  })),
  upgrades: instance.upgrades.map((u) => ({ ...u, requiredBy: null, onlyAt: null })),
});

/** The visits with one item done at this visit and at no other. */
function moveItem(
  instance: PlanInstance,
  choices: readonly VisitChoice[],
  id: string,
  visit: number | null,
): VisitChoice[] {
  const items = [...instance.parts, ...instance.upgrades];
  return instance.visits.map((_, i) => {
    const before = choices.find((c) => c.visit === i + 1);
    const others = (before?.replace ?? []).filter((r) => r !== id);
    const replace = visit === i ? [...others, id] : others;
    const wanted = items.filter((item) => replace.includes(item.id)).flatMap((item) => item.access.flat());
    return { visit: i + 1, replace, operations: closeOperations(instance.operations, wanted), kits: [] };
  });
}

/**
 * Expected cost of the plan with one remedy at each visit instead, and with it left out, the other remedies where they
 * are planned: what waiting costs, in closed form. Every access group must hold one operation, and there are no kits.
 */
export function computeAlternatives(
  instance: PlanInstance,
  choices: readonly VisitChoice[],
  id: string,
): readonly Alternative[] {
  const free = relaxed(instance);
  return [...instance.visits.map((_, i) => i), null].map((visit) => ({
    visit,
    cost: evaluatePlan(free, moveItem(free, choices, id, visit)).cost,
  }));
}
