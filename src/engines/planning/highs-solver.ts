import type { ProgrammeAnswer, ProgrammeEnd, ProgrammeSolver } from "./programme-solver.ts";

/** What is used of a loaded HiGHS (package "highs"); written out here so that the engine imports no package. */
export interface HighsRuntime {
  withModel<T>(source: { readonly format: "lp"; readonly data: string }, operation: (model: HighsModel) => T): T;
}

interface HighsModel {
  readonly options: { set(values: Readonly<Record<string, boolean | number | string>>): unknown };
  readonly info: { get(name: string): number | bigint };
  run(): { readonly modelStatus: number };
  getSolution(): { readonly colValue: ArrayLike<number> };
  getColByName(name: string): number;
}

/** Model status codes of the HiGHS C interface; 9 is "infeasible or unbounded", and every variable here is bounded. */
const ENDS: Readonly<Record<number, ProgrammeEnd>> = {
  7: "optimal",
  8: "infeasible",
  9: "infeasible",
  13: "limit",
  14: "limit",
};
/**
 * Searches for a first good plan that HiGHS makes before it branches. A small programme, of one visit of a car, has its
 * optimum proved in a quarter of the time without them; a large one whose time runs out is left with a worse plan (measured).
 */
const WITHOUT_FIRST_SEARCHES = {
  mip_heuristic_run_feasibility_jump: false,
  mip_heuristic_run_rins: false,
  mip_heuristic_run_rens: false,
  mip_heuristic_run_root_reduced_cost: false,
  mip_heuristic_run_zi_round: false,
  mip_heuristic_run_shifting: false,
};
/** Variables of a programme that counts as small. */
const SMALL = 1000;
/** Value of primal_solution_status where there is a point that keeps every row. */
const FEASIBLE = 2;

function readAnswer(model: HighsModel, columns: readonly string[]): ProgrammeAnswer {
  const { modelStatus } = model.run();
  const end = ENDS[modelStatus];
  if (end === undefined) throw new Error(`HiGHS ended with model status ${modelStatus}.`);
  const found = end !== "infeasible" && Number(model.info.get("primal_solution_status")) === FEASIBLE;
  const bound = Number(model.info.get("mip_dual_bound"));
  const { colValue } = model.getSolution();
  return {
    end,
    values: found ? new Map(columns.map((name) => [name, colValue[model.getColByName(name)] as number])) : null,
    bound: end === "infeasible" || !Number.isFinite(bound) ? null : bound,
  };
}

/** A loaded HiGHS as the solver the planning engine asks; every question is answered by a fresh model. */
export function highsSolver(highs: HighsRuntime): ProgrammeSolver {
  return {
    solve: (text, columns, limits) =>
      highs.withModel({ format: "lp", data: text }, (model) => {
        model.options.set({ output_flag: false, mip_rel_gap: 0, mip_abs_gap: limits.gap });
        if (columns.length <= SMALL) model.options.set(WITHOUT_FIRST_SEARCHES);
        if (limits.seconds !== null) model.options.set({ time_limit: limits.seconds });
        return readAnswer(model, columns);
      }),
  };
}
