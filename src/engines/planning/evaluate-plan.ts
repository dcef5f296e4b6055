import { type Cents, roundToCents } from "./cents.ts";
import { closeOperations } from "./closure.ts";
import type { Part, PlanInstance, Upgrade, VisitChoice } from "./instance.ts";
import { computeIntervalCost, discountsOf } from "./intervals.ts";
import { computeUpgradeCost } from "./plan-programme.ts";

/** A rule that a plan breaks, with the reason in words. */
export interface BrokenRule {
  readonly rule:
    | "access"
    | "needed-operation"
    | "alignment"
    | "interval"
    | "pair"
    | "upgrade-twice"
    | "upgrade-late"
    | "sound-before-firmer"
    | "fixed-visit"
    | "bay-hours"
    | "budget";
  /** Number of the visit; null where it is about the plan as a whole. */
  readonly visit: number | null;
  /** Id of the part, upgrade or operation; "" for the visit itself. */
  readonly id: string;
  readonly reason: string;
}

/** A visit with its hours and what is spent on it before discount. */
export interface CostedVisit extends VisitChoice {
  readonly hours: number;
  readonly spend: number;
}

export interface PlanCost {
  readonly cost: Cents;
  readonly visits: readonly CostedVisit[];
  readonly broken: readonly BrokenRule[];
}

/** Slack of the limits on hours and money. */
const CAP_SLACK = 1e-6;

/** One visit as chosen: its hours, its spend, its discounted cost in cents. */
function costVisit(plan: PlanInstance, choice: VisitChoice): { costed: CostedVisit; cost: Cents } {
  const { visit, replace, operations, kits } = choice;
  const discount = discountsOf(plan)[visit] as number;
  const done = plan.operations.filter((o) => operations.includes(o.id));
  const disturbed = new Set(done.flatMap((o) => o.disturbs));
  const bought = plan.kits.filter((k) => kits.includes(k.id));
  const covered = new Set(bought.flatMap((k) => k.contents));
  const amounts = [
    plan.visits[visit - 1]?.fixedCost ?? 0,
    ...done.map((o) => plan.labourRate * o.hours),
    ...plan.hardware.filter((h) => disturbed.has(h.id)).map((h) => h.price),
    ...bought.map((k) => k.price),
    ...plan.parts.filter((p) => replace.includes(p.id) && !covered.has(p.id)).map((p) => p.price),
  ];
  const upgrades = plan.upgrades.filter((u) => replace.includes(u.id));
  const spend = [...amounts, ...upgrades.map((u) => u.price)].reduce((sum, a) => sum + a, 0);
  const discounted = amounts.map((a) => roundToCents(discount * a)).reduce((sum, c) => sum + c, 0);
  return {
    costed: { ...choice, hours: done.reduce((sum, o) => sum + o.hours, 0), spend },
    cost: discounted + upgrades.reduce((sum, u) => sum + computeUpgradeCost(plan, u, visit), 0),
  };
}

function checkAccess(plan: PlanInstance, choice: VisitChoice): BrokenRule[] {
  const { visit, replace, operations } = choice;
  const there = new Set(operations);
  const broken: BrokenRule[] = [];
  for (const item of [...plan.parts, ...plan.upgrades].filter((i) => replace.includes(i.id))) {
    for (const group of item.access.filter((g) => !g.some((o) => there.has(o))))
      broken.push({
        rule: "access",
        visit,
        id: item.id,
        reason: `it is reached by ${group.join(" or ")}, which the visit does not do`,
      });
  }
  for (const id of operations) {
    for (const need of closeOperations(plan.operations, [id]).filter((o) => !there.has(o)))
      broken.push({ rule: "needed-operation", visit, id, reason: `it needs ${need}, which the visit does not do` });
  }
  const rule = plan.alignment;
  const cause =
    rule &&
    [...replace.filter((i) => rule.ifParts.includes(i)), ...operations.filter((o) => rule.ifOperations.includes(o))][0];
  if (rule && cause !== undefined && !there.has(rule.operation))
    broken.push({ rule: "alignment", visit, id: rule.operation, reason: `${cause} asks for it` });
  return broken;
}

function checkCaps(plan: PlanInstance, { visit, hours, spend }: CostedVisit): BrokenRule[] {
  const limits = plan.visits[visit - 1];
  const broken: BrokenRule[] = [];
  const over = (rule: "bay-hours" | "budget", what: number, most: number | null | undefined): void => {
    if (most !== null && most !== undefined && what > most + CAP_SLACK)
      broken.push({ rule, visit, id: "", reason: `${what} where at most ${most} is allowed` });
  };
  over("bay-hours", hours, limits?.bayHours);
  over("budget", spend, limits?.budget);
  return broken;
}

/** Cost of all units of a part, renewed at these visits. */
function costPart(plan: PlanInstance, part: Part, visits: readonly number[], broken: BrokenRule[]): Cents {
  let cost = 0;
  let from = 0;
  for (const to of [...visits, plan.visits.length + 1]) {
    const interval = computeIntervalCost(plan, part, from, to);
    if (interval === null)
      broken.push({
        rule: "interval",
        visit: to <= plan.visits.length ? to : null,
        id: part.id,
        reason:
          from === 0
            ? "the unit now fitted may not stay that long"
            : `the unit fitted at visit ${from} may not stay that long`,
      });
    else cost += interval;
    from = to;
  }
  return cost;
}

function checkFixed(plan: PlanInstance, when: ReadonlyMap<string, readonly number[]>): BrokenRule[] {
  return [...plan.parts, ...plan.upgrades].flatMap(({ id, onlyAt }): BrokenRule[] =>
    onlyAt === undefined || onlyAt === null || (when.get(id) ?? []).join() === String(onlyAt)
      ? []
      : [{ rule: "fixed-visit", visit: onlyAt, id, reason: `it is fixed to visit ${onlyAt}` }],
  );
}

function checkUpgrade(
  plan: PlanInstance,
  upgrade: Upgrade,
  when: ReadonlyMap<string, readonly number[]>,
): BrokenRule[] {
  const visits = when.get(upgrade.id) ?? [];
  const by = upgrade.requiredBy;
  const broken: BrokenRule[] = [];
  if (visits.length > 1)
    broken.push({
      rule: "upgrade-twice",
      visit: visits[1] as number,
      id: upgrade.id,
      reason: "it is fitted once at most",
    });
  if (by !== null && !visits.some((t) => t <= by))
    broken.push({ rule: "upgrade-late", visit: by, id: upgrade.id, reason: `it must be fitted by visit ${by}` });
  for (const visit of visits) {
    const worn = plan.parts.filter((p) => upgrade.requires.includes(p.id) && !p.conditionOk);
    for (const part of worn.filter((p) => !(when.get(p.id) ?? []).some((t) => t <= visit)))
      broken.push({ rule: "sound-before-firmer", visit, id: upgrade.id, reason: `${part.id} must be renewed first` });
  }
  return broken;
}

/**
 * What a plan costs over the whole horizon, in cents, with every rule it breaks; visits it does not name are not used.
 * The sum is exact: every amount is rounded to cents on its own (docs/method/planning.md).
 */
export function evaluatePlan(plan: PlanInstance, choices: readonly VisitChoice[]): PlanCost {
  const used = choices
    .filter((c) => c.replace.length + c.operations.length + c.kits.length > 0)
    .sort((a, b) => a.visit - b.visit);
  const when = new Map<string, number[]>();
  for (const { visit, replace } of used) {
    for (const id of replace) when.set(id, [...(when.get(id) ?? []), visit]);
  }
  const costed = used.map((choice) => costVisit(plan, choice));
  const broken: BrokenRule[] = used.flatMap((choice) => checkAccess(plan, choice));
  const parts = plan.parts.map((part) => costPart(plan, part, when.get(part.id) ?? [], broken));
  for (const [first, ...others] of plan.pairs) {
    const at = (id: string | undefined): string => (id === undefined ? "" : (when.get(id) ?? []).join());
    for (const other of others.filter((id) => at(id) !== at(first)))
      broken.push({ rule: "pair", visit: null, id: other, reason: `it is renewed together with ${first}` });
  }
  broken.push(...plan.upgrades.flatMap((u) => checkUpgrade(plan, u, when)), ...checkFixed(plan, when));
  broken.push(...costed.flatMap((v) => checkCaps(plan, v.costed)));
  return {
    cost: [...parts, ...costed.map((v) => v.cost)].reduce((sum, c) => sum + c, 0),
    visits: costed.map((v) => v.costed),
    broken,
  };
}

/** A broken rule in one line. */
export function formatBrokenRule({ rule, visit, id, reason }: BrokenRule): string {
  const where = visit === null ? "" : `visit ${visit}: `;
  return `${where}${id === "" ? rule : id}: ${reason}`;
}
