import type { Axle, Family } from "../family.ts";
import type { FamilyWork, Operation, RemedyTemplate } from "../family-work.ts";
import { positionsOfAxle } from "../positions/positions-of.ts";
import { axleJobs, memberJobs, springJobs } from "./usual-chassis-jobs.ts";
import { usualAccess } from "./usual-hours.ts";
import { ALIGN, INVENTED, operationOf, partsOf, remedyOf, type UsualJob } from "./usual-job.ts";
import { usualLimits } from "./usual-limits.ts";
import { brakeJobs, wheelJobs } from "./usual-wheel-jobs.ts";

const align: Operation = {
  id: ALIGN,
  label: "Four wheels: measure and set the alignment",
  hours: 1.2,
  scope: "car",
  phase: "alignment",
  access: [],
  fasteners: [],
  support: "",
  cautions: [],
  loosens: [],
  needsAlignment: true,
  source: INVENTED,
};

const pressures: Operation = {
  ...align,
  id: "set-tyre-pressures",
  label: "Four tyres: set the pressures, cold",
  hours: 0.1,
  phase: "chassis",
  needsAlignment: false,
};

/** What sets what is only read: done once for the whole car, without a part. */
const settings: readonly RemedyTemplate[] = [
  { id: "alignment", label: "Alignment, all four wheels", cures: ["alignment"], operations: [align.id] },
  { id: "tyre-pressures", label: "Tyre pressures, set cold", cures: ["tyre/pressure"], operations: [pressures.id] },
].map((setting) => ({ ...setting, axle: null, parts: [], pair: false }));

/**
 * What is usual for the layouts of a family: every position of its axles is cured by a remedy. Hours are invented start
 * values, limits are practice or memory, prices and torques are not on file; nothing here claims to be measured.
 */
export function usualWork(family: Family): FamilyWork {
  const jobs = [family.front, family.rear].flatMap((axle) => jobsOf(axle).map((job) => ({ axle: axle.name, job })));
  return {
    origin: "usual",
    limits: usualLimits,
    access: usualAccess(family.front, family.rear),
    operations: [...jobs.map(({ axle, job }) => operationOf(axle, job)), align, pressures],
    remedies: [...jobs.map(({ axle, job }) => remedyOf(axle, job)), ...settings],
    parts: [...new Map(jobs.flatMap(({ axle, job }) => partsOf(axle, job).map((part) => [part.id, part]))).values()],
    knownFaults: [],
    alignment: [],
  };
}

/** The jobs of an axle with the positions it has: a job cures places in full ("damper/leak"), and one that cures none is left out. */
function jobsOf(axle: Axle): UsualJob[] {
  const positions = positionsOfAxle(axle);
  return [...memberJobs(axle), ...springJobs(axle), ...axleJobs(axle), ...wheelJobs, ...brakeJobs].flatMap((job) => {
    const cures = positions
      .filter(({ item, detail, kind }) =>
        [item, kind, detail === null ? item : `${item}/${detail}`].some((name) => job.cures.includes(name)),
      )
      .map(({ item, detail }) => (detail === null ? item : `${item}/${detail}`));
    return cures.length === 0 ? [] : [{ ...job, cures: [...new Set(cures)] }];
  });
}
