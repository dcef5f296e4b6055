import { type Cents, roundToCents } from "./cents.ts";
import type { Part, PlanInstance } from "./instance.ts";
import { computeFailureProbability, computeMedianLife } from "./survival.ts";

/** One unit of a part from one visit to another: 0 = the unit now fitted, number of visits + 1 = the end. */
export interface Interval {
  readonly from: number;
  readonly to: number;
  readonly cost: Cents;
}

/** Slack of the limits on age and risk, so that a limit met exactly is met. */
const AGE_SLACK = 1e-9;
const RISK_SLACK = 1e-12;

/** Odometer by index: 0 and 1 are now, then the visits, then the horizon. */
export function odometersOf(plan: PlanInstance): readonly number[] {
  const visits = plan.visits.map((v) => v.odometer);
  return [visits[0] ?? plan.horizon, ...visits, plan.horizon];
}

/** Factor on money by index: 0 and 1 are now, then the visits, then the end. */
export function discountsOf(plan: PlanInstance): readonly number[] {
  const factors = plan.visits.map((v) => v.discount);
  return [factors[0] ?? plan.endDiscount, ...factors, plan.endDiscount];
}

/** Age of the unit at both ends of an interval. */
export function agesIn(plan: PlanInstance, part: Part, from: number, to: number): readonly [number, number] {
  const at = odometersOf(plan);
  const start = from === 0 ? part.ageNow : 0;
  return [start, start + (at[to] as number) - (at[from] as number)];
}

/** What keeping one unit from one index to another costs, or null where that is not allowed. */
export function computeIntervalCost(plan: PlanInstance, part: Part, from: number, to: number): Cents | null {
  const end = plan.visits.length + 1;
  const [startAge, endAge] = agesIn(plan, part, from, to);
  if (from === 0 && to > 1 && part.mustNow) return null;
  if (part.maxAge !== null && endAge > part.maxAge + AGE_SLACK) return null;
  if (!part.wear) return 0;
  const { life, failCost, mostRisk, endValueShare } = part.wear;
  const risk = computeFailureProbability(life, startAge, endAge);
  if (mostRisk !== null && risk > mostRisk + RISK_SLACK) return null;
  const factor = discountsOf(plan)[to] as number;
  const left = to === end ? Math.max(0, 1 - endAge / computeMedianLife(life)) : 0;
  return roundToCents(factor * risk * failCost - factor * endValueShare * part.price * left);
}

/** Every interval that is allowed for a part, with what it costs, by start and then by end. */
export function computeIntervals(plan: PlanInstance, part: Part): readonly Interval[] {
  const end = plan.visits.length + 1;
  const intervals: Interval[] = [];
  for (let from = 0; from < end; from++) {
    for (let to = from + 1; to <= end; to++) {
      const cost = computeIntervalCost(plan, part, from, to);
      if (cost !== null) intervals.push({ from, to, cost });
    }
  }
  return intervals;
}
