/** How the search for a programme's optimum ended. */
export type ProgrammeEnd = "optimal" | "infeasible" | "limit";

export interface ProgrammeAnswer {
  readonly end: ProgrammeEnd;
  /** Values of the best point found, by column name; null where none was found. */
  readonly values: ReadonlyMap<string, number> | null;
  /** Proved lower bound of the cost; null where there is none. */
  readonly bound: number | null;
}

export interface ProgrammeLimits {
  /** Longest search; null: until it is done. */
  readonly seconds: number | null;
  /** The search may end once the best point is proved to lie this near to the optimum, in the unit of the cost. */
  readonly gap: number;
}

/** A mixed-integer solver that stands ready: the outside loads it, the engine asks it. */
export interface ProgrammeSolver {
  /** Minimises a programme given in LP form (formatProgramme); throws where it cannot read it or breaks down. */
  solve(text: string, columns: readonly string[], limits: ProgrammeLimits): ProgrammeAnswer;
}
