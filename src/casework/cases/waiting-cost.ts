import { type Cents, closeOperations, evaluatePlan, type PlanInstance, type VisitChoice } from "#engines/planning";

/** One remedy set to a visit, or left out of the plan. */
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

/** The visits with one item done at none of them. */
function leaveOutItem(instance: PlanInstance, choices: readonly VisitChoice[], id: string): VisitChoice[] {
  const items = [...instance.parts, ...instance.upgrades];
  return instance.visits.map((_, i) => {
    const before = choices.find((c) => c.visit === i + 1);
    const replace = (before?.replace ?? []).filter((r) => r !== id);
    const wanted = items.filter((item) => replace.includes(item.id)).flatMap((item) => item.access.flat());
    return { visit: i + 1, replace, operations: closeOperations(instance.operations, wanted), kits: [] };
  });
}

/**
 * Expected cost of the plan with one remedy set to each visit instead, what nobody set free to move along: the very cost
 * the plan has once it is set there. Left out: the others where they are planned, in closed form; every access group
 * must hold one operation, and there are no kits.
 * @param costAt cost of the plan with the remedy set to this visit, cents; null: there is no such plan, and it is left out
 */
export function computeAlternatives(
  instance: PlanInstance,
  choices: readonly VisitChoice[],
  id: string,
  costAt: (visit: number) => Cents | null,
): readonly Alternative[] {
  const free = relaxed(instance);
  const atVisits = instance.visits.flatMap((_, visit): readonly Alternative[] => {
    const cost = costAt(visit);
    return cost === null ? [] : [{ visit, cost }];
  });
  return [...atVisits, { visit: null, cost: evaluatePlan(free, leaveOutItem(free, choices, id)).cost }];
}
