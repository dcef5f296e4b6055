import type { PlanDocument } from "./documents.ts";

/** Distance between visits a plan starts from: a yearly service (from memory; the owner's own replaces it). */
export const SERVICE_KM = 15_000;

/** Visits of a plan nobody has changed: now, the next service and the one after. */
export function usualPlan(odometerKm: number): PlanDocument {
  return {
    visits: [
      { label: "Now", odometerKm },
      { label: "Next service", odometerKm: odometerKm + SERVICE_KM },
      { label: "Second service", odometerKm: odometerKm + 2 * SERVICE_KM },
    ],
    declined: [],
    agreed: [],
    fixed: [],
    horizonKm: odometerKm + 2.5 * SERVICE_KM,
  };
}

/** A plan document without visits with the usual ones set; what was said of remedies stays. */
export function withUsualVisits(plan: PlanDocument, odometerKm: number | null): PlanDocument {
  const { visits, horizonKm } = usualPlan(odometerKm ?? 0);
  return { ...plan, visits, horizonKm };
}
