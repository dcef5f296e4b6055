import { diagnosisSuite } from "./diagnosis/diagnosis-suite.ts";
import { scoreBand } from "./doors/band-rows.ts";
import { rubberSuite } from "./doors/rubber-suite.ts";
import { scoreGeometry } from "./geometry/geometry-rows.ts";
import { scoreSpatial } from "./geometry/spatial-rows.ts";
import { layoutsSuite } from "./layouts/layouts-suite.ts";
import { lifeSuite } from "./life/life-suite.ts";
import { scoreCompliance } from "./linkage/compliance-rows.ts";
import { scoreTravel } from "./linkage/travel-rows.ts";
import { metrologySuite } from "./metrology/metrology-suite.ts";
import { planSuite } from "./plan/plan-suite.ts";
import type { Row } from "./score.ts";
import { secondSolverSuite } from "./second-solver/second-solver-suite.ts";
import { wholeCarSuite } from "./whole-car/whole-car-suite.ts";

/** A set of checks against figures that were computed or printed elsewhere. */
export interface Suite {
  readonly title: string;
  /** Where its figures come from, in one or two sentences. */
  readonly about: string;
  readonly score: () => readonly Row[];
}

export const travelSuite: Suite = {
  title: "Rigid linkage",
  about:
    "Invented corners of five layouts: 306 positions by wheel-centre travel and rack, 81 by contact height, one branch that ends. Computed independently for this project in two formulations, one of them in 50 digits; stored with 15 digits.",
  score: scoreTravel,
};

export const complianceSuite: Suite = {
  title: "Linkage with rubber",
  about:
    "The same corners with invented rates: 126 corners sound, soft, with play or at another height, 1512 balances with their branches and stability, tangents and secants. Computed independently for this project in two formulations, one of them in 40 digits; stored with 13 digits.",
  score: scoreCompliance,
};

export const bandSuite: Suite = {
  title: "Bands",
  about:
    "Seven invented corners with tolerances on every hard point. Derivatives by complex step in an independent program; the differences under load by extrapolated central differences of another.",
  score: scoreBand,
};

export const geometrySuite: Suite = {
  title: "Plane and steering geometry",
  about:
    "Check values that were printed with six or so decimals; the tolerance is theirs, and no more digits than printed can agree.",
  score: () => [...scoreGeometry(), ...scoreSpatial()],
};

export const suites: readonly Suite[] = [
  travelSuite,
  complianceSuite,
  bandSuite,
  geometrySuite,
  wholeCarSuite,
  metrologySuite,
  rubberSuite,
  diagnosisSuite,
  layoutsSuite,
  planSuite,
  lifeSuite,
  secondSolverSuite,
];
