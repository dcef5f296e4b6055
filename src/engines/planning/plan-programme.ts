import { roundToCents } from "./cents.ts";
import type { PlanInstance, Upgrade } from "./instance.ts";
import { computeIntervals, discountsOf } from "./intervals.ts";
import { type Programme, ProgrammeBuilder, type Term } from "./programme.ts";

/** A limit of one visit. */
export interface Cap {
  /** Number of the visit, from 1. */
  readonly visit: number;
  readonly kind: "bay-hours" | "budget";
}

/** Names of the variables, by the index of a thing in its list and the number of the visit. */
export const columnNames = {
  /** A part (by index) or an upgrade (by index after the last part) is fitted. */
  fitted: (item: number, visit: number): string => `x${item}_${visit}`,
  operation: (operation: number, visit: number): string => `z${operation}_${visit}`,
  kit: (kit: number, visit: number): string => `w${kit}_${visit}`,
  interval: (part: number, from: number, to: number): string => `y${part}_${from}_${to}`,
  hardware: (hardware: number, visit: number): string => `b${hardware}_${visit}`,
  single: (part: number, visit: number): string => `g${part}_${visit}`,
  visit: (visit: number): string => `v${visit}`,
};

/** Every limit of the visits, in order. */
export function capsOf(plan: PlanInstance): readonly Cap[] {
  return plan.visits.flatMap((v, i) => [
    ...(v.bayHours === null ? [] : [{ visit: i + 1, kind: "bay-hours" } as const]),
    ...(v.budget === null ? [] : [{ visit: i + 1, kind: "budget" } as const]),
  ]);
}

/** Price of an upgrade at a visit less what it is good for until the horizon, each rounded alone, in cents. */
export function computeUpgradeCost(plan: PlanInstance, upgrade: Upgrade, visit: number): number {
  const discount = discountsOf(plan)[visit] as number;
  const distance = plan.horizon - (plan.visits[visit - 1]?.odometer ?? plan.horizon);
  return roundToCents(discount * upgrade.price) - roundToCents((upgrade.benefitPer1000 * distance) / 1000);
}

/** What a visit costs before discount, as terms over its variables; null where nothing costs anything. */
export function spendTerms(plan: PlanInstance, visit: number): readonly Term[] {
  const terms: Term[] = [[plan.visits[visit - 1]?.fixedCost ?? 0, columnNames.visit(visit)]];
  plan.operations.forEach((o, i) => {
    terms.push([plan.labourRate * o.hours, columnNames.operation(i, visit)]);
  });
  plan.hardware.forEach((h, i) => {
    terms.push([h.price, columnNames.hardware(i, visit)]);
  });
  plan.kits.forEach((k, i) => {
    terms.push([k.price, columnNames.kit(i, visit)]);
  });
  plan.parts.forEach((p, i) => {
    terms.push([p.price, columnNames.single(i, visit)]);
  });
  plan.upgrades.forEach((u, i) => {
    terms.push([u.price, columnNames.fitted(plan.parts.length + i, visit)]);
  });
  return terms.filter(([price]) => price !== 0);
}

/** Hours of a visit as terms over its variables. */
export function hourTerms(plan: PlanInstance, visit: number): readonly Term[] {
  return plan.operations.flatMap((o, i) =>
    o.hours === 0 ? [] : [[o.hours, columnNames.operation(i, visit)] as const],
  );
}

/** Each unit of a part is followed by the next, from the one now fitted to the one at the end. */
function addParts(plan: PlanInstance, to: ProgrammeBuilder): void {
  const end = plan.visits.length + 1;
  const names = columnNames;
  plan.parts.forEach((part, p) => {
    const intervals = computeIntervals(plan, part);
    for (const { from, to: until, cost } of intervals) to.column(names.interval(p, from, until), cost);
    const starting = (at: number): Term[] =>
      intervals.filter((i) => i.from === at).map((i) => [1, names.interval(p, i.from, i.to)]);
    const ending = (at: number): Term[] =>
      intervals.filter((i) => i.to === at).map((i) => [1, names.interval(p, i.from, i.to)]);
    for (let t = 1; t < end; t++) to.column(names.fitted(p, t), 0, true);
    to.row(starting(0), "=", 1);
    for (let t = 1; t < end; t++) {
      const fitted: Term = [-1, names.fitted(p, t)];
      to.row([...ending(t), fitted], "=", 0);
      to.row([...starting(t), fitted], "=", 0);
    }
  });
  for (const pair of plan.pairs) {
    const [first, ...others] = pair.map((id) => plan.parts.findIndex((p) => p.id === id));
    for (const other of others) {
      for (let t = 1; t < end; t++)
        to.row(
          [
            [1, names.fitted(first as number, t)],
            [-1, names.fitted(other, t)],
          ],
          "=",
          0,
        );
    }
  }
}

/** An upgrade is fitted once at most, in time, and on parts that are new or known sound. */
function addUpgrades(plan: PlanInstance, to: ProgrammeBuilder): void {
  const visits = plan.visits.map((_, i) => i + 1);
  const names = columnNames;
  plan.upgrades.forEach((upgrade, u) => {
    const item = plan.parts.length + u;
    const fittedBy = (last: number): Term[] => visits.filter((t) => t <= last).map((t) => [1, names.fitted(item, t)]);
    for (const t of visits) to.column(names.fitted(item, t), computeUpgradeCost(plan, upgrade, t), true);
    to.row(fittedBy(visits.length), "<=", 1);
    if (upgrade.requiredBy !== null) to.row(fittedBy(upgrade.requiredBy), ">=", 1);
    for (const id of upgrade.requires) {
      const p = plan.parts.findIndex((part) => part.id === id);
      const part = plan.parts[p];
      if (!part || part.conditionOk) continue;
      const kept = computeIntervals(plan, part).filter((i) => i.from === 0);
      // Not "renewed by t is at least fitted at t": the present unit still there after t and the upgrade fitted by t
      // exclude each other, which says the same of whole numbers and cuts off more of the rest.
      for (const t of visits) {
        const still = kept.filter((i) => i.to > t).map((i): Term => [1, names.interval(p, 0, i.to)]);
        to.row([...fittedBy(t), ...still], "<=", 1);
      }
    }
  });
}

/** What is fixed to a visit is fitted there and at no other. */
function addFixed(plan: PlanInstance, to: ProgrammeBuilder): void {
  [...plan.parts, ...plan.upgrades].forEach(({ onlyAt }, item) => {
    if (onlyAt === undefined || onlyAt === null) return;
    for (let t = 1; t <= plan.visits.length; t++) to.row([[1, columnNames.fitted(item, t)]], "=", t === onlyAt ? 1 : 0);
  });
}

/** Operations, what they need and disturb, what gives access, what is bought, the alignment rule. */
function addVisit(plan: PlanInstance, visit: number, to: ProgrammeBuilder): void {
  const names = columnNames;
  const discount = discountsOf(plan)[visit] as number;
  const cost = (amount: number): number => roundToCents(discount * amount);
  const operation = new Map(plan.operations.map((o, i) => [o.id, names.operation(i, visit)]));
  const hardware = new Map(plan.hardware.map((h, i) => [h.id, names.hardware(i, visit)]));
  const items = [...plan.parts, ...plan.upgrades];
  const fitted = new Map(items.map((item, i) => [item.id, names.fitted(i, visit)]));
  const named = (columns: ReadonlyMap<string, string>, id: string): string => {
    const column = columns.get(id);
    if (column === undefined) throw new Error(`${id} is named but not listed`);
    return column;
  };
  const atLeast = (more: string, less: string): void =>
    to.row(
      [
        [1, more],
        [-1, less],
      ],
      ">=",
      0,
    );

  const used = to.column(names.visit(visit), cost(plan.visits[visit - 1]?.fixedCost ?? 0));
  for (const [i, o] of plan.operations.entries())
    to.column(names.operation(i, visit), cost(plan.labourRate * o.hours), true);
  for (const [i, h] of plan.hardware.entries()) to.column(names.hardware(i, visit), cost(h.price));
  for (const [i, k] of plan.kits.entries()) to.column(names.kit(i, visit), cost(k.price), true);
  for (const [i, p] of plan.parts.entries()) to.column(names.single(i, visit), cost(p.price));

  for (const o of plan.operations) {
    const done = named(operation, o.id);
    atLeast(used, done);
    for (const need of o.needs) atLeast(named(operation, need), done);
    for (const piece of o.disturbs) atLeast(named(hardware, piece), done);
  }
  items.forEach((item, i) => {
    const fit = names.fitted(i, visit);
    if (item.access.length === 0) atLeast(used, fit);
    for (const group of item.access) {
      to.row([...group.map((id): Term => [1, named(operation, id)]), [-1, fit]], ">=", 0);
    }
  });
  plan.parts.forEach((part, i) => {
    const covering = plan.kits.flatMap((k, n): Term[] =>
      k.contents.includes(part.id) ? [[1, names.kit(n, visit)]] : [],
    );
    to.row([[1, names.single(i, visit)], ...covering, [-1, names.fitted(i, visit)]], ">=", 0);
  });
  const rule = plan.alignment;
  if (!rule) return;
  const aligned = named(operation, rule.operation);
  for (const id of rule.ifParts) atLeast(aligned, named(fitted, id));
  for (const id of rule.ifOperations) atLeast(aligned, named(operation, id));
}

/**
 * The plan as a mixed-integer programme, costs in cents (docs/method/planning.md); `caps` are the limits that count.
 * Ids must be resolved: a name that is not listed is a fault of the caller.
 */
export function buildPlanProgramme(plan: PlanInstance, caps: readonly Cap[] = capsOf(plan)): Programme {
  const builder = new ProgrammeBuilder();
  addParts(plan, builder);
  addUpgrades(plan, builder);
  addFixed(plan, builder);
  for (let t = 1; t <= plan.visits.length; t++) addVisit(plan, t, builder);
  for (const { visit, kind } of caps) {
    const limits = plan.visits[visit - 1];
    const most = kind === "bay-hours" ? limits?.bayHours : limits?.budget;
    const terms = kind === "bay-hours" ? hourTerms(plan, visit) : spendTerms(plan, visit);
    if (most !== null && most !== undefined && terms.length > 0) builder.row(terms, "<=", most);
  }
  return builder.build();
}
