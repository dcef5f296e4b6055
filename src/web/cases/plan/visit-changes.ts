import type { PlanDocument } from "#casework";

type Visits = PlanDocument["visits"];

/** Distance of an added visit from the last where there is only one, km (from memory: a yearly service). */
const USUAL_GAP_KM = 15_000;
/** How much farther than its last visit a plan looks at least when one is added, of the gap before it. */
const LOOK_BEYOND = 0.5;

const changed = (visits: Visits, at: number, visit: Partial<Visits[number]>): Visits =>
  visits.map((one, i) => (i === at ? { ...one, ...visit } : one));

/** A visit under another name. */
export const renameVisit = (plan: PlanDocument, at: number, label: string): PlanDocument => ({
  ...plan,
  visits: changed(plan.visits, at, { label }),
});

/** A visit on a day that was agreed, ISO; "" leaves the day to the pace of the car. */
export const dateVisit = (plan: PlanDocument, at: number, date: string): PlanDocument => ({
  ...plan,
  visits: changed(plan.visits, at, { date: date === "" ? undefined : date }),
});

/** A visit at another odometer, km; a plan whose last visit goes beyond its horizon looks as far. */
export const moveVisit = (plan: PlanDocument, at: number, odometerKm: number): PlanDocument => {
  const visits = changed(plan.visits, at, { odometerKm });
  return { ...plan, visits, horizonKm: Math.max(plan.horizonKm, visits.at(-1)?.odometerKm ?? 0) };
};

/** One visit more, as far beyond the last as that is beyond the one before. */
export const addVisit = (plan: PlanDocument): PlanDocument => {
  const [before, last] = [plan.visits.at(-2), plan.visits.at(-1)];
  const from = last?.odometerKm ?? 0;
  const gap = before === undefined ? USUAL_GAP_KM : from - before.odometerKm;
  const odometerKm = from + gap;
  return {
    ...plan,
    visits: [...plan.visits, { label: `Visit ${plan.visits.length + 1}`, odometerKm }],
    horizonKm: Math.max(plan.horizonKm, odometerKm + LOOK_BEYOND * gap),
  };
};

/** One visit less; what was set to it by hand is free again, what was set to a later one stays with it. */
export const removeVisit = (plan: PlanDocument, at: number): PlanDocument => ({
  ...plan,
  visits: plan.visits.filter((_, i) => i !== at),
  fixed: plan.fixed
    .filter(({ visit }) => visit !== at)
    .map(({ remedy, visit }) => ({ remedy, visit: visit > at ? visit - 1 : visit })),
});

/** A plan that looks ahead to this odometer, km. */
export const lookAheadTo = (plan: PlanDocument, horizonKm: number): PlanDocument => ({ ...plan, horizonKm });

/** The visits, the horizon and what is set by hand as they were before, everything else as it is now. */
export const withVisitsOf = (plan: PlanDocument, before: PlanDocument): PlanDocument => ({
  ...plan,
  visits: before.visits,
  fixed: before.fixed,
  horizonKm: before.horizonKm,
});
