import type { Door } from "../door.ts";
import { alignmentAxle } from "./alignment-axle.ts";
import { alignmentCasterFromSweep } from "./alignment-caster-from-sweep.ts";
import { linkageBand } from "./linkage-band.ts";
import { linkageCompliance } from "./linkage-compliance.ts";
import { linkageTravel } from "./linkage-travel.ts";

/** Every calculation that can be asked for, in the order of the list. */
export const doors: readonly Door[] = [
  linkageTravel,
  linkageCompliance,
  linkageBand,
  alignmentCasterFromSweep,
  alignmentAxle,
];
