import type { Cents } from "./cents.ts";
import { type CostedVisit, evaluatePlan, formatBrokenRule } from "./evaluate-plan.ts";
import { explainInfeasible, type InfeasibleReason } from "./explain-infeasible.ts";
import type { PlanInstance, VisitChoice } from "./instance.ts";
import { buildPlanProgramme, columnNames } from "./plan-programme.ts";
import { formatProgramme } from "./programme.ts";
import type { ProgrammeSolver } from "./programme-solver.ts";
import { trimChoice } from "./trim-choice.ts";

export type PlanAnswer =
  | {
      /** "optimal": proved; "limit": the time ran out, the bound says how far from the optimum it can be at most. */
      readonly status: "optimal" | "limit";
      readonly cost: Cents;
      /** No plan costs less; null where nothing is proved. */
      readonly bound: Cents | null;
      readonly visits: readonly CostedVisit[];
    }
  | { readonly status: "limit"; readonly cost: null; readonly bound: Cents | null; readonly visits: readonly [] }
  | { readonly status: "infeasible"; readonly reasons: readonly InfeasibleReason[] };

/** Costs are whole cents: proved to less than one cent is proved. */
const PROOF_GAP = 0.5;
/** How far a bound may lie above a whole cent by the solver's arithmetic alone, in cents. */
const BOUND_NOISE = 1e-3;

function readChoices(plan: PlanInstance, values: ReadonlyMap<string, number>): VisitChoice[] {
  const on = (column: string): boolean => (values.get(column) ?? 0) > 0.5;
  const items = [...plan.parts, ...plan.upgrades];
  return plan.visits.map((_, i) => {
    const visit = i + 1;
    return {
      visit,
      replace: items.filter((_item, n) => on(columnNames.fitted(n, visit))).map((item) => item.id),
      operations: plan.operations.filter((_o, n) => on(columnNames.operation(n, visit))).map((o) => o.id),
      kits: plan.kits.filter((_k, n) => on(columnNames.kit(n, visit))).map((k) => k.id),
    };
  });
}

/** The lowest whole number of cents a bound allows (nought without a sign). */
const wholeCents = (bound: number | null): Cents | null => (bound === null ? null : Math.ceil(bound - BOUND_NOISE) + 0);

/**
 * The plan of least cost, proved, or the best found in the time with the gap that is left, or why there is none.
 * `seconds` is the longest search for the plan itself; null searches until it is done. The answer's cost is summed
 * from its own choices, not taken from the solver; a choice that breaks a rule is a fault and throws.
 */
export function solvePlan(plan: PlanInstance, solver: ProgrammeSolver, seconds: number | null): PlanAnswer {
  const programme = buildPlanProgramme(plan);
  const names = programme.columns.map((c) => c.name);
  const { end, values, bound } = solver.solve(formatProgramme(programme), names, { seconds, gap: PROOF_GAP });
  if (end === "infeasible") return { status: "infeasible", reasons: explainInfeasible(plan, solver) };
  const proved = wholeCents(bound);
  if (!values) return { status: "limit", cost: null, bound: proved, visits: [] };
  const choices = readChoices(plan, values).map((choice) => trimChoice(plan, choice));
  const { cost, visits, broken } = evaluatePlan(plan, choices);
  if (broken.length > 0)
    throw new Error(`The plan found breaks its rules: ${broken.map(formatBrokenRule).join("; ")}.`);
  const least = proved === null ? null : Math.min(proved, cost);
  return { status: least === cost ? "optimal" : "limit", cost, bound: least, visits };
}
