import type { AxleName } from "../corners.ts";
import type { FastenerUse, Operation, RemedyTemplate, StockPart, WorkScope } from "../family-work.ts";

/** Said of every figure of the usual work: none of it was measured on a car. */
export const INVENTED = "invented start value; the workshop's own clock replaces it";
const PRACTICE = "common practice, no source";

/** One piece of usual work: an operation, the remedy that is made of it and the part it fits. */
export interface UsualJob {
  /** Without its axle: "damper"; the operation reads "renew-front-damper". */
  readonly id: string;
  readonly label: string;
  /** Items, or items with a detail, that it cures. */
  readonly cures: readonly string[];
  readonly verb: "renew" | "press" | "overhaul" | "check";
  readonly hours: number;
  readonly scope: WorkScope;
  readonly phase: Operation["phase"];
  readonly access: readonly string[];
  readonly support: string;
  readonly cautions: readonly number[];
  readonly loosens: Operation["loosens"];
  readonly fasteners: readonly UsualFastener[];
  /** Parts for one side; an axle's worth is two of them. */
  readonly parts: readonly { readonly id: string; readonly label: string; readonly count: number }[];
  readonly pair: boolean;
  readonly needsAlignment: boolean;
}

export interface UsualFastener {
  readonly item: string;
  readonly label: string;
  readonly count: number;
  readonly policy: FastenerUse["policy"];
  readonly atRideHeight: boolean;
}

/** Id of the operation that aligns the car once at the end of a visit. */
export const ALIGN = "align-four-wheels";

export function operationOf(axle: AxleName, job: UsualJob): Operation {
  return {
    id: `${job.verb}-${axle}-${job.id}`,
    label: `${job.label}, ${axle}: ${job.verb}`,
    hours: job.hours,
    scope: job.scope,
    phase: job.phase,
    access: job.access,
    fasteners: job.fasteners.map((fastener) => ({
      ...fastener,
      locker: "none",
      grease: false,
      stages: null,
      owner: "practice",
      source: PRACTICE,
    })),
    support: job.support,
    cautions: job.cautions,
    loosens: job.loosens,
    needsAlignment: job.needsAlignment,
    source: INVENTED,
  };
}

export function remedyOf(axle: AxleName, job: UsualJob): RemedyTemplate {
  return {
    id: `${axle}-${job.id}`,
    label: `${job.label}, ${axle}`,
    axle,
    cures: job.cures,
    operations: [`${job.verb}-${axle}-${job.id}`, ...(job.needsAlignment ? [ALIGN] : [])],
    parts: job.parts.map(({ id, count }) => ({ part: `${axle}-${id}`, count })),
    pair: job.pair,
  };
}

/** Parts of a job; what they cost is not on file. */
export function partsOf(axle: AxleName, job: UsualJob): StockPart[] {
  return job.parts.map(({ id, label }) => ({
    id: `${axle}-${id}`,
    label: `${label}, ${axle}`,
    priceCents: null,
    kind: "part",
    contents: [],
  }));
}
