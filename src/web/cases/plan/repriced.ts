import { type PlanDocument, type VisitPlan, visitName } from "#casework";

/** A remedy whose price or visit is another since the plan was changed. */
export interface Repriced {
  readonly id: string;
  readonly label: string;
  /** Cents; null: no price of its own. */
  readonly before: number | null;
  readonly after: number | null;
  /** Name of the visit it is at now where that is another; null where it stayed. */
  readonly movedTo: string | null;
}

/** What somebody last changed on a plan, and what it did to the prices of the others. */
export interface Turn {
  /** What was done, in one sentence. */
  readonly words: string;
  readonly repriced: readonly Repriced[];
}

/** A plan as it is shown, with the document it was made from. */
export interface ShownPlan {
  readonly plan: VisitPlan;
  readonly planDocument: Pick<PlanDocument, "declined" | "fixed">;
}

/** What became of the other remedies of a plan when one was changed; those that stayed are left out. */
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

/** The change between two plans that somebody made by a word or by hand; null where there was none. */
export function findTurn(before: ShownPlan, after: ShownPlan): Turn | null {
  const { plan } = after;
  const [was, is] = [before.planDocument, after.planDocument];
  const names = (ids: readonly string[]): string =>
    ids.map((id) => plan.remedies.find(({ remedy }) => remedy.id === id)?.remedy.label ?? id).join("; ");
  const declined = is.declined.filter((id) => !was.declined.includes(id));
  const takenIn = was.declined.filter((id) => !is.declined.includes(id));
  const set = is.fixed.filter((f) => !was.fixed.some((o) => o.remedy === f.remedy && o.visit === f.visit));
  const left = was.fixed.filter((f) => !is.fixed.some((o) => o.remedy === f.remedy)).map((f) => f.remedy);
  const told = [
    ...(declined.length === 0 ? [] : [`Declined: ${names(declined)}.`]),
    ...(takenIn.length === 0 ? [] : [`Taken in again: ${names(takenIn)}.`]),
    ...set.map(({ remedy, visit }) => `Set by hand to ${visitName(plan, visit)}: ${names([remedy])}.`),
    ...(left.length === 0 ? [] : [`Left to the plan again: ${names(left)}.`]),
  ];
  const turned = [...declined, ...takenIn, ...set.map((f) => f.remedy), ...left];
  return told.length === 0 ? null : { words: told.join(" "), repriced: compareRepriced(before.plan, plan, turned) };
}

/** True while every price a turn tells is still the one in its row. */
export const isStillSo = ({ repriced }: Turn, plan: VisitPlan): boolean =>
  repriced.every(({ id, after }) =>
    plan.remedies.some(({ remedy, price }) => remedy.id === id && (price?.total ?? null) === after),
  );
