import loadHighs from "highs";
import { type Door, doorsWith, highsSolver, type ProgrammeSolver } from "#contract";

/** The mixed-integer solver; HiGHS is loaded once per process. */
export const loadSolver = async (): Promise<ProgrammeSolver> => highsSolver(await loadHighs());

/** Every calculation, those with a mixed-integer solver included. */
export const doorsFor = (solver: ProgrammeSolver): readonly Door[] => doorsWith(solver);
