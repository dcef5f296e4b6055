import type { PlanInstance } from "./instance.ts";
import { computeIntervals } from "./intervals.ts";
import { buildPlanProgramme, type Cap, capsOf, hourTerms, spendTerms } from "./plan-programme.ts";
import { formatProgramme, type Programme } from "./programme.ts";
import type { ProgrammeAnswer, ProgrammeSolver } from "./programme-solver.ts";

/** Why there is no plan, as far as it can be told. */
export type InfeasibleReason =
  /** No sequence of units keeps this part's limits on age and risk. */
  | { readonly kind: "part"; readonly id: string }
  /**
   * These limits together leave no plan, and each of them counts; `least` is what this one would have to be with every
   * other limit as it is, null where that cannot be told or does not help.
   */
  | { readonly kind: "cap"; readonly cap: Cap; readonly most: number; readonly least: number | null }
  /** Pairs, upgrades and their dates contradict each other. */
  | { readonly kind: "rules" };

/** Seconds one of these questions may take: they only explain. */
const SECONDS = 20;
const HOURS_AND_MONEY_GAP = 1e-7;

function ask(solver: ProgrammeSolver, programme: Programme, costs: ReadonlyMap<string, number>): ProgrammeAnswer {
  const priced = { ...programme, columns: programme.columns.map((c) => ({ ...c, cost: costs.get(c.name) ?? 0 })) };
  const names = priced.columns.map((c) => c.name);
  return solver.solve(formatProgramme(priced), names, { seconds: SECONDS, gap: HOURS_AND_MONEY_GAP });
}

const NO_COST: ReadonlyMap<string, number> = new Map();

/** False only where it is proved that no plan keeps these limits. */
const mayBeKept = (plan: PlanInstance, solver: ProgrammeSolver, caps: readonly Cap[]): boolean =>
  ask(solver, buildPlanProgramme(plan, caps), NO_COST).end !== "infeasible";

/** Parts whose limits no sequence of units keeps. */
function findStuckParts(plan: PlanInstance): string[] {
  const end = plan.visits.length + 1;
  return plan.parts
    .filter((part) => {
      const reached = new Set([0]);
      for (const { from, to } of computeIntervals(plan, part)) if (reached.has(from)) reached.add(to);
      return !reached.has(end);
    })
    .map((part) => part.id);
}

/** What a limit would have to be at least, all others held. */
function findLeast(plan: PlanInstance, solver: ProgrammeSolver, cap: Cap): number | null {
  const others = capsOf(plan).filter((c) => c.visit !== cap.visit || c.kind !== cap.kind);
  const terms = cap.kind === "bay-hours" ? hourTerms(plan, cap.visit) : spendTerms(plan, cap.visit);
  const costs = new Map(terms.map(([price, name]) => [name, price]));
  const { end, values } = ask(solver, buildPlanProgramme(plan, others), costs);
  if (end !== "optimal" || !values) return null;
  return terms.reduce((sum, [price, name]) => sum + price * ((values.get(name) ?? 0) > 0.5 ? 1 : 0), 0);
}

/**
 * Why a plan that was proved infeasible is so: parts that cannot be kept, else a set of limits of which none can be
 * left out (each limit is dropped in turn and stays dropped where the rest is still too tight), else the rules.
 */
export function explainInfeasible(plan: PlanInstance, solver: ProgrammeSolver): readonly InfeasibleReason[] {
  const stuck = findStuckParts(plan);
  if (stuck.length > 0) return stuck.map((id) => ({ kind: "part", id }));
  if (!mayBeKept(plan, solver, [])) return [{ kind: "rules" }];
  let tight = capsOf(plan);
  for (const cap of tight) {
    const without = tight.filter((c) => c !== cap);
    if (!mayBeKept(plan, solver, without)) tight = without;
  }
  return tight.map((cap) => {
    const limits = plan.visits[cap.visit - 1];
    const most = (cap.kind === "bay-hours" ? limits?.bayHours : limits?.budget) ?? 0;
    return { kind: "cap", cap, most, least: findLeast(plan, solver, cap) };
  });
}

/** A reason in one line: what is short, and what would do. */
export function formatInfeasibleReason(reason: InfeasibleReason): string {
  if (reason.kind === "part") return `${reason.id}: no sequence of units keeps its limits on age and risk`;
  if (reason.kind === "rules") return "what must be renewed together and by when contradicts itself";
  const { cap, most, least } = reason;
  const what = cap.kind === "bay-hours" ? "hours in the bay" : "budget";
  const would = least === null ? "" : `, ${Number(least.toFixed(2))} would do`;
  return `visit ${cap.visit}: ${what} ${most}${would}`;
}
