import type { Suite } from "../suites.ts";
import { scorePlans } from "./plan-rows.ts";

export const planSuite: Suite = {
  title: "Replacement planning",
  about:
    "Seven invented cars, one of them without any plan. Each optimum was proved by several mixed-integer solvers and again by a second, separately written formulation in exact fractions, the small ones also by enumeration; amounts in units of money.",
  score: () => scorePlans(),
};
