import type { Suite } from "../suites.ts";
import { scoreLife } from "./life-rows.ts";

export const lifeSuite: Suite = {
  title: "Life from the distance lasted",
  about:
    "Chance that a part sound at one age fails within a further distance, 1 - S(x + dx)/S(x), for Weibull and log-normal lives fitted to published and invented sets. Computed by another program; stored with 15 digits.",
  score: scoreLife,
};
