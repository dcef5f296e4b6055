import type { PlanDocument } from "./documents.ts";
import { formatKm } from "./format-km.ts";

/** Something about the visits of a plan that cannot be planned with: where, what came, what was needed. */
export interface PlanOddity {
  readonly code: "plan-below-car" | "plan-order" | "plan-horizon" | "plan-fixed-visit";
  /** Index of the visit it stands at; null: the horizon, or what is set by hand. */
  readonly visit: number | null;
  /** Words for where: "Next service, odometer". */
  readonly where: string;
  readonly got: string;
  readonly needed: string;
}

type Visits = Pick<PlanDocument, "visits" | "fixed" | "horizonKm">;

/** Distances beside which the visits stand in words; km or miles are the caller's. */
export type DistanceWords = (km: number) => string;

const checkVisit = ({ visits }: Visits, i: number, carKm: number | null, words: DistanceWords): PlanOddity[] => {
  const here = visits[i];
  const before = visits[i - 1];
  if (here === undefined) return [];
  const at = { visit: i, where: `${here.label}, odometer`, got: words(here.odometerKm) };
  if (carKm !== null && here.odometerKm < carKm)
    return [{ code: "plan-below-car", ...at, needed: `at least ${words(carKm)}, what the car shows` }];
  if (before !== undefined && here.odometerKm <= before.odometerKm)
    return [
      {
        code: "plan-order",
        ...at,
        needed: `more than ${words(before.odometerKm)} of the visit before, ${before.label}`,
      },
    ];
  return [];
};

/**
 * Everything about the visits and the horizon of a plan that cannot be planned with; none where all is well, or where
 * there is no visit yet.
 * @param carKm what the car's odometer shows at this visit; null: not read, or not to be looked at
 * @param words how a distance is written
 */
export function checkPlanVisits(
  plan: Visits,
  carKm: number | null,
  words: DistanceWords = formatKm,
): readonly PlanOddity[] {
  const { visits, fixed, horizonKm } = plan;
  const last = visits.at(-1);
  if (last === undefined) return [];
  const odd = visits.flatMap((_, i) => checkVisit(plan, i, carKm, words));
  if (horizonKm < last.odometerKm)
    odd.push({
      code: "plan-horizon",
      visit: null,
      where: "How far it looks ahead",
      got: words(horizonKm),
      needed: `at least ${words(last.odometerKm)} of the last visit, ${last.label}`,
    });
  for (const { remedy, visit } of fixed)
    if (visit >= visits.length)
      odd.push({
        code: "plan-fixed-visit",
        visit: null,
        where: `Set by hand, ${remedy}`,
        got: `visit ${visit + 1}`,
        needed: `one of ${visits.length} visits`,
      });
  return odd;
}

/** One oddity in a sentence: where, what came, what was needed. */
export const oddityWords = ({ where, got, needed }: PlanOddity): string => `${where}: ${got}; needed is ${needed}.`;

/**
 * A saved plan that begins where the car stands today. Later visits stay at the odometer they were set to; where one of
 * them would lie behind the car, all of them and the horizon move along with it.
 */
export function planFromNow(plan: PlanDocument, carKm: number | null): PlanDocument {
  const [first, ...later] = plan.visits;
  if (carKm === null || first === undefined || first.odometerKm === carKm) return plan;
  const by = later.some(({ odometerKm }) => odometerKm <= carKm) ? carKm - first.odometerKm : 0;
  const visits = later.map((visit) => ({ ...visit, odometerKm: visit.odometerKm + by }));
  return { ...plan, visits: [{ ...first, odometerKm: carKm }, ...visits], horizonKm: plan.horizonKm + by };
}
