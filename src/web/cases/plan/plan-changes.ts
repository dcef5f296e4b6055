import type { PlanDocument } from "#casework";

const without = (list: readonly string[], id: string): readonly string[] => list.filter((one) => one !== id);

/** The owner agrees to a remedy as a whole. */
export const agreeTo = (plan: PlanDocument, remedy: string, by: string, at: string): PlanDocument => ({
  ...plan,
  declined: without(plan.declined, remedy),
  agreed: [...plan.agreed.filter((a) => a.remedy !== remedy), { remedy, by, at }],
});

/** Neither agreed to nor declined. */
export const leaveOpen = (plan: PlanDocument, remedy: string): PlanDocument => ({
  ...plan,
  declined: without(plan.declined, remedy),
  agreed: plan.agreed.filter((a) => a.remedy !== remedy),
});

/** The owner declines a remedy; the others are priced without it. */
export const decline = (plan: PlanDocument, remedy: string): PlanDocument => ({
  ...leaveOpen(plan, remedy),
  declined: [...without(plan.declined, remedy), remedy],
});

/** Sets a remedy to a visit by hand; null leaves it to the plan again. */
export const fixTo = (plan: PlanDocument, remedy: string, visit: number | null): PlanDocument => {
  const fixed = plan.fixed.filter((f) => f.remedy !== remedy);
  return { ...plan, fixed: visit === null ? fixed : [...fixed, { remedy, visit }] };
};
