import type { VisitPlan } from "#casework";

/** A remedy whose price or visit is another since the owner declined something, or took it in again. */
export interface Repriced {
  readonly id: string;
  readonly label: string;
  /** Cents; null: not within the plan. */
  readonly before: number | null;
  readonly after: number | null;
  /** Name of the visit it is at now where that is another; null where it stayed. */
  readonly movedTo: string | null;
}

const visitName = (plan: VisitPlan, at: number | null): string =>
  at === null ? "not within this plan" : (plan.visits[at]?.label ?? "another visit");

/** What became of the other remedies of a plan when one was declined or taken in again; those that stayed are left out. */
export const compareRepriced = (before: VisitPlan, after: VisitPlan, turned: readonly string[]): readonly Repriced[] =>
  after.remedies.flatMap((now): readonly Repriced[] => {
    const { id, label } = now.remedy;
    const was = before.remedies.find(({ remedy }) => remedy.id === id);
    if (was === undefined || turned.includes(id)) return [];
    const [old, fresh] = [was.price?.total ?? null, now.price?.total ?? null];
    const moved = was.visit !== now.visit;
    if (old === fresh && !moved) return [];
    return [{ id, label, before: old, after: fresh, movedTo: moved ? visitName(after, now.visit) : null }];
  });
