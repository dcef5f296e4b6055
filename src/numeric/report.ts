/** How an iteration ended. */
export type SolveEnd = "converged" | "iteration-limit" | "singular" | "infeasible" | "ill-posed";

/** What a solver returns beside its best iterate: never an exception, never a silent NaN. */
export interface SolveReport {
  readonly end: SolveEnd;
  readonly iterations: number;
  /** Largest remaining equation error at the best iterate, in the unit the solver names. */
  readonly residual: number;
}
