import type { PlanInstance } from "#engines/planning";
import type { Family, Limit, ShopRates } from "#vehicle";
import type { PlanDocument } from "./documents.ts";
import { remainingLife } from "./remaining-life.ts";
import type { CarOperation, CarRemedy } from "./remedies.ts";

/** Cost of a failure on the road beside the remedy itself: one more visit and towing, cents (invented; the workshop's own replaces it). */
export const FAILURE_EXTRA_CENTS = 18_000;
/** A part that is "plan" may at most run this share of the risk before it is renewed (invented). */
export const MOST_RISK = 0.35;
/** Money at the end of the plan counts this much of money now (invented). */
const HORIZON_DISCOUNT = 0.97;

/** What the parts of a remedy cost, cents; what has no price on file counts nothing. */
export const partsCents = (remedy: CarRemedy): number =>
  remedy.parts.reduce((sum, p) => sum + (p.priceCents ?? 0) * p.count, 0);

/** Operations and access pieces of all remedies, each once; access is needed by what it opens. */
export function operationsOf(remedies: readonly CarRemedy[]): PlanInstance["operations"] {
  const out = new Map<string, PlanInstance["operations"][number]>();
  const add = (op: CarOperation): void => {
    for (const a of op.access) out.set(a.id, { id: a.id, hours: a.hours, needs: [], disturbs: [] });
    out.set(op.id, { id: op.id, hours: op.operation.hours, needs: op.access.map((a) => a.id), disturbs: [] });
  };
  for (const r of remedies) for (const op of r.operations) add(op);
  return [...out.values()];
}

/**
 * The planning instance of a car: distances in km, money in whole units of the currency. A remedy with a practice band
 * is a part that wears; one without a band is something that must be done by a visit: "repair first" now, "plan" by the
 * second visit. "Watch" without a band asks for nothing yet and is left out. What is fixed by hand is done at its visit;
 * what cures a cause somebody accepted (`accepted`: ids of remedies) is done now.
 */
export function buildInstance(
  family: Family,
  limits: readonly Limit[],
  remedies: readonly CarRemedy[],
  plan: PlanDocument,
  rates: ShopRates,
  accepted: ReadonlySet<string> = new Set(),
): PlanInstance {
  const startKm = plan.visits[0]?.odometerKm ?? 0;
  const last = plan.visits.length;
  const fixed = new Map(plan.fixed.map((f) => [f.remedy, Math.min(f.visit, last - 1) + 1]));
  const wearing: PlanInstance["parts"][number][] = [];
  const due: PlanInstance["upgrades"][number][] = [];
  for (const r of remedies) {
    const remaining = remainingLife(family, limits, r, startKm);
    const onlyAt = fixed.get(r.id) ?? null;
    const now = r.grade >= 3 || accepted.has(r.id);
    const item = { id: r.id, price: partsCents(r) / 100, access: r.operations.map((op) => [op.id]), onlyAt };
    if (!remaining) {
      if (onlyAt === null && r.grade < 2 && !now) continue;
      const requiredBy = onlyAt ?? Math.min(now ? 1 : 2, last);
      due.push({ ...item, requires: [], requiredBy, benefitPer1000: 0 });
    } else
      wearing.push({
        ...item,
        ageNow: remaining.ageKm,
        wear: {
          life: remaining.life,
          failCost: item.price + FAILURE_EXTRA_CENTS / 100,
          mostRisk: onlyAt === null && r.grade === 2 ? MOST_RISK : null,
          endValueShare: 0,
        },
        maxAge: null,
        mustNow: onlyAt === null && now,
        conditionOk: r.grade <= 1,
      });
  }
  return {
    labourRate: rates.labourCentsPerHour / 100,
    horizon: Math.max(plan.horizonKm, ...plan.visits.map((v) => v.odometerKm)),
    endDiscount: HORIZON_DISCOUNT,
    visits: plan.visits.map((v) => ({
      odometer: v.odometerKm,
      discount: 1,
      fixedCost: rates.visitCents / 100,
      bayHours: null,
      budget: null,
    })),
    parts: wearing,
    pairs: [],
    operations: operationsOf(remedies),
    hardware: [],
    kits: [],
    upgrades: due,
    alignment: null,
  };
}
