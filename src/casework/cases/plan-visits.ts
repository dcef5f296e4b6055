import {
  type Cents,
  computeRemedyPrices,
  type Life,
  type PlanAnswer,
  type PlanInstance,
  type ProgrammeSolver,
  type RemedyPrice,
  solvePlan,
} from "#engines/planning";
import type { Family, PracticeLife, ShopRates } from "#vehicle";
import type { PlanDocument } from "./documents.ts";
import type { CarOperation, CarRemedy } from "./remedies.ts";

/** How long a remedy's part lasts from new, from a practice band; null where none is on file. */
export interface RemainingLife {
  readonly life: Life;
  readonly source: string;
  readonly ageKm: number;
}

export interface PlannedRemedy {
  readonly remedy: CarRemedy;
  /** Index of the visit it is planned for; null: declined, or left for later than the horizon. */
  readonly visit: number | null;
  readonly declined: boolean;
  readonly price: RemedyPrice | null;
  /** False: a part of it has no price on file; the price is then labour and what is known. */
  readonly priceComplete: boolean;
  readonly remaining: RemainingLife | null;
  /** Chance that it does not last from now to each visit, and to the horizon at the end. */
  readonly riskTo: readonly (number | null)[];
}

export interface VisitPlan {
  readonly remedies: readonly PlannedRemedy[];
  /** Total of each visit, cents without tax. */
  readonly totals: readonly Cents[];
  readonly status: PlanAnswer["status"] | "nothing-to-plan";
  readonly cost: Cents | null;
  readonly bound: Cents | null;
  /** Expected cost of doing each remedy at each visit instead, the rest of the plan free: what waiting costs. */
  readonly reasons: readonly string[];
}

/** Cost of a failure on the road beside the remedy itself: one more visit and towing, cents (invented; the workshop's own replaces it). */
const FAILURE_EXTRA_CENTS = 18_000;
/** A part that is "plan" may at most run this share of the risk before the second visit. */
const MOST_RISK = 0.35;
const HORIZON_DISCOUNT = 0.97;

/** Weibull through the 10 % and 90 % points of a band: -ln(1-p) = (x/scale)^shape. */
export function lifeOfBand(band: Pick<PracticeLife, "lowKm" | "highKm">): Life {
  const [a, b] = [-Math.log(0.9), -Math.log(0.1)];
  const shape = Math.log(b / a) / Math.log(band.highKm / band.lowKm);
  return { family: "weibull", shape, scale: band.lowKm / a ** (1 / shape) };
}

/** The band of the first finding of a remedy that has one. */
export function remainingLife(family: Family, remedy: CarRemedy, odometerKm: number): RemainingLife | null {
  for (const finding of remedy.findings) {
    const place = `${finding.axle}/${finding.place.slice(finding.place.indexOf("/") + 1)}`;
    const band = family.life.find((l) => l.position === place);
    if (band) return { life: lifeOfBand(band), source: band.source, ageKm: odometerKm };
  }
  return null;
}

/** Chance that a unit of this age does not last another `further` km. */
export function riskOver(remaining: RemainingLife, further: number): number {
  const { life, ageKm } = remaining;
  if (life.family !== "weibull") return 0;
  const hazard = (x: number): number => (x / life.scale) ** life.shape;
  return 1 - Math.exp(hazard(ageKm) - hazard(ageKm + further));
}

const partsCents = (remedy: CarRemedy): number =>
  remedy.parts.reduce((sum, p) => sum + (p.priceCents ?? 0) * p.count, 0);

/** Operations and access pieces of all remedies, each once; access is needed by what it opens. */
function operationsOf(remedies: readonly CarRemedy[]): PlanInstance["operations"] {
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
 * is a part that wears; one without a band, or one fixed by hand, is something that must be done by a visit: "repair
 * first" now, "plan" by the second visit. "Watch" without a band asks for nothing yet and is left out.
 */
export function buildInstance(
  family: Family,
  remedies: readonly CarRemedy[],
  plan: PlanDocument,
  rates: ShopRates,
): PlanInstance {
  const now = plan.visits[0]?.odometerKm ?? 0;
  const fixed = new Map(plan.fixed.map((f) => [f.remedy, f.visit]));
  const wearing: PlanInstance["parts"][number][] = [];
  const due: PlanInstance["upgrades"][number][] = [];
  for (const r of remedies) {
    const remaining = remainingLife(family, r, now);
    const item = { id: r.id, price: partsCents(r) / 100, access: r.operations.map((op) => [op.id]) };
    const by = fixed.get(r.id);
    if (by !== undefined || !remaining) {
      if (by === undefined && r.grade < 2) continue;
      const visit = by ?? (r.grade >= 3 ? 0 : 1);
      due.push({ ...item, requires: [], requiredBy: Math.min(visit, plan.visits.length - 1) + 1, benefitPer1000: 0 });
    } else
      wearing.push({
        ...item,
        ageNow: remaining.ageKm,
        wear: {
          life: remaining.life,
          failCost: item.price + FAILURE_EXTRA_CENTS / 100,
          mostRisk: r.grade === 2 ? MOST_RISK : null,
          endValueShare: 0,
        },
        maxAge: null,
        mustNow: r.grade >= 3,
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

/**
 * Now or later: the least expected cost over the visits, proved, with shared access charged once a visit; prices of the
 * remedies of each visit re-add to the visit's total. Remedies the owner declined are left out and the rest repriced.
 */
export function planVisits(
  family: Family,
  remedies: readonly CarRemedy[],
  plan: PlanDocument,
  rates: ShopRates,
  solver: ProgrammeSolver,
): VisitPlan {
  const kept = remedies.filter((r) => !plan.declined.includes(r.id));
  const now = plan.visits[0]?.odometerKm ?? 0;
  const answer = kept.length === 0 ? null : relaxUntilFeasible(buildInstance(family, kept, plan, rates), solver);
  const visitOf = new Map<string, number>();
  if (answer && answer.status !== "infeasible")
    for (const v of answer.visits) for (const id of v.replace) if (!visitOf.has(id)) visitOf.set(id, v.visit - 1);
  const prices = plan.visits.map((_, i) =>
    priceVisit(
      kept.filter((r) => visitOf.get(r.id) === i),
      rates,
    ),
  );
  const planned = remedies.map((remedy): PlannedRemedy => {
    const visit = visitOf.get(remedy.id) ?? null;
    const remaining = remainingLife(family, remedy, now);
    return {
      remedy,
      visit,
      declined: plan.declined.includes(remedy.id),
      price: visit === null ? null : (prices[visit]?.remedies.find((p) => p.id === remedy.id) ?? null),
      priceComplete: remedy.parts.every((p) => p.priceCents !== null),
      remaining,
      riskTo: [...plan.visits.map((v) => v.odometerKm), plan.horizonKm].map((km) =>
        remaining ? riskOver(remaining, Math.max(0, km - now)) : null,
      ),
    };
  });
  return {
    remedies: planned,
    totals: prices.map((p) => p.total),
    status: answer ? answer.status : "nothing-to-plan",
    cost: answer && answer.status !== "infeasible" ? answer.cost : null,
    bound: answer && answer.status !== "infeasible" ? answer.bound : null,
    reasons: answer?.status === "infeasible" ? answer.reasons.map((r) => JSON.stringify(r)) : [],
  };
}

/** A part too old for its band can break its own risk limit at every visit: then it is due now, and that is the answer. */
function relaxUntilFeasible(instance: PlanInstance, solver: ProgrammeSolver): PlanAnswer {
  const first = solvePlan(instance, solver, 20);
  if (first.status !== "infeasible") return first;
  const due = instance.parts.map((p) => ({
    ...p,
    mustNow: p.mustNow || p.wear?.mostRisk != null,
    wear: p.wear && { ...p.wear, mostRisk: null },
  }));
  return solvePlan({ ...instance, parts: due }, solver, 20);
}

/** Prices of one visit's remedies. */
export function priceVisit(remedies: readonly CarRemedy[], rates: ShopRates) {
  return computeRemedyPrices(
    {
      labourRate: rates.labourCentsPerHour,
      operations: operationsOf(remedies),
      hardware: [],
      kits: [],
      visitCost: remedies.length > 0 ? rates.visitCents : 0,
      alignment: null,
    },
    remedies.map((r) => ({
      id: r.id,
      operations: r.operations.map((o) => o.id),
      parts: r.parts.map((p) => ({ id: p.id, price: (p.priceCents ?? 0) * p.count })),
    })),
  );
}
