import type { Suite } from "../suites.ts";
import { scoreSecondSolver } from "./second-solver-rows.ts";

export const secondSolverSuite: Suite = {
  title: "Second solver",
  about:
    "Whole requests and answers of ten doors, drawn at random. Computed by a solver in another language that was written from the published conventions alone; corners, bushes, networks and plans are invented. Every key and its type counts too.",
  score: scoreSecondSolver,
};
