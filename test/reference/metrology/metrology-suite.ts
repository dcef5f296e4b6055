import type { Suite } from "../suites.ts";
import { scoreMetrology } from "./metrology-rows.ts";

export const metrologySuite: Suite = {
  title: "Measurement uncertainty and decisions",
  about:
    "Check values that were printed with three to eight digits; the tolerance is theirs, and no more digits than printed can agree. The gauge block and the impedance are worked examples of the guide to uncertainty.",
  score: scoreMetrology,
};
