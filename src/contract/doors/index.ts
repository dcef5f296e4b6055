import type { ProgrammeSolver } from "#engines/planning";
import type { Door } from "../door.ts";
import { alignmentAxle } from "./alignment-axle.ts";
import { alignmentCasterFromSweep } from "./alignment-caster-from-sweep.ts";
import { diagnosisNetwork } from "./diagnosis-network.ts";
import { diagnosisSuspects } from "./diagnosis-suspects.ts";
import { linkageBand } from "./linkage-band.ts";
import { linkageBodies } from "./linkage-bodies.ts";
import { linkageBodiesCompliance } from "./linkage-bodies-compliance.ts";
import { linkageBodiesLoadStates } from "./linkage-bodies-load-states.ts";
import { linkageCar } from "./linkage-car.ts";
import { linkageCarBalance } from "./linkage-car-balance.ts";
import { linkageCompliance } from "./linkage-compliance.ts";
import { linkageJoints } from "./linkage-joints.ts";
import { linkageLoadStates } from "./linkage-load-states.ts";
import { linkageMatch } from "./linkage-match.ts";
import { linkageTravel } from "./linkage-travel.ts";
import { metrologyConformity } from "./metrology-conformity.ts";
import { planningSolve } from "./planning-solve.ts";
import { rubberFirmer } from "./rubber-firmer.ts";
import { rubberHydraulic } from "./rubber-hydraulic.ts";
import { rubberRate } from "./rubber-rate.ts";

/** Every calculation that can be asked for with nothing loaded, in the order of the list. */
export const doors: readonly Door[] = [
  linkageTravel,
  linkageBodies,
  linkageBodiesCompliance,
  linkageBodiesLoadStates,
  linkageJoints,
  linkageCar,
  linkageCarBalance,
  linkageLoadStates,
  linkageCompliance,
  linkageBand,
  linkageMatch,
  alignmentCasterFromSweep,
  alignmentAxle,
  metrologyConformity,
  rubberRate,
  rubberFirmer,
  rubberHydraulic,
  diagnosisNetwork,
  diagnosisSuspects,
];

/** The calculations with those that need a mixed-integer solver: a root that has loaded one offers these. */
export const doorsWith = (solver: ProgrammeSolver): readonly Door[] => [...doors, planningSolve(solver)];
