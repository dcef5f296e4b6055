import type { z } from "zod";
import { type ProgrammeSolver, solvePlan } from "#engines/planning";
import type { Door } from "../door.ts";
import { checkPlan } from "./planning-check.ts";
import { formatPlanAnswer, planFromWire } from "./planning-reading.ts";
import { planInput, planOutput, type WirePlan } from "./planning-schema.ts";

/** The planning door, answered by a solver that the program's root has loaded. */
export const planningSolve = (solver: ProgrammeSolver): Door<WirePlan> => ({
  id: "planning.solve",
  summary: "What to renew at which visit at the least cost over a horizon, proved, or why there is no plan",
  input: planInput as unknown as z.ZodType<WirePlan>,
  output: planOutput,
  relation: "mixed-integer programme: units as intervals between visits, shared operations once per visit",
  source: "own formulation, docs/method/planning.md; solved by HiGHS",
  accuracy: "the cent, against two other solvers and a second formulation (docs/verification.md)",
  check: checkPlan,
  compute: (wire) => ({ output: formatPlanAnswer(solvePlan(planFromWire(wire), solver, wire.time_limit_s)) }),
});
