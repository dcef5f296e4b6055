import type { ProgrammeAnswer, ProgrammeSolver } from "#engines/planning";

/** Answers kept; a visit with sixty remedies asks some eighty questions. */
const MOST_KEPT = 400;

/**
 * A solver that answers a programme it has solved before from memory: a plan is told with what every remedy costs at every
 * other visit, and most of those programmes are the same after the next word of the owner. A search that was cut short is
 * tried again, so that the answers are those of the solver itself.
 */
export function createRememberingSolver(): (solver: ProgrammeSolver) => ProgrammeSolver {
  const answers = new Map<string, ProgrammeAnswer>();
  return (solver) => ({
    solve: (text, columns, limits) => {
      const key = JSON.stringify([text, columns, limits]);
      const known = answers.get(key);
      // What was asked last is kept longest.
      answers.delete(key);
      const answer = known ?? solver.solve(text, columns, limits);
      if (answer.end !== "limit") answers.set(key, answer);
      const [oldest] = answers.keys();
      if (answers.size > MOST_KEPT && oldest !== undefined) answers.delete(oldest);
      return answer;
    },
  });
}
