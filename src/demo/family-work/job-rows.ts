/** Said of every figure of the demo workshop. */
export const INVENTED = "invented for the demo workshop";

/** A fastener of an invented car line, without how many of it a job loosens. */
export interface FastenerRow {
  readonly label: string;
  readonly policy: "always-new" | "if-seized" | "reuse";
  readonly locker?: "pre-applied" | "tube";
  readonly grease?: true;
  /** Joining torque in N·m and, on top of it, an angle in degrees; null: not on file. */
  readonly tight: readonly [torqueNm: number] | readonly [torqueNm: number, angleDeg: number] | null;
  readonly atRideHeight?: true;
}

/** One job of an invented car line: the operation, and the remedy made of it. */
export interface JobRow {
  readonly id: string;
  readonly axle: "front" | "rear";
  readonly label: string;
  readonly verb: "renew" | "press" | "overhaul" | "check";
  readonly cures: readonly string[];
  readonly hours: number;
  readonly scope?: "axle" | "car";
  readonly phase?: "brakes" | "electrics";
  readonly access: readonly string[];
  readonly support?: string;
  readonly cautions: readonly number[];
  readonly loosens?: readonly string[];
  readonly aligns?: true;
  readonly fasteners?: readonly (readonly [item: string, count: number])[];
  /** Parts for one side. */
  readonly parts: readonly (readonly [part: string, count: number])[];
  readonly pair?: true;
}

/** A part of an invented car line; contents make it a set. */
export type PartRow = readonly [id: string, label: string, priceCents: number | null, kind?: "hardware" | "consumable"];
export type SetRow = readonly [
  id: string,
  label: string,
  priceCents: number,
  contents: readonly (readonly [part: string, count: number])[],
];

export interface AccessRow {
  readonly id: string;
  readonly label: string;
  readonly hours: number;
  readonly scope: "corner" | "axle" | "car";
}

export interface WorkRows {
  readonly limits: readonly object[];
  readonly access: readonly AccessRow[];
  readonly fasteners: Readonly<Record<string, FastenerRow>>;
  readonly jobs: readonly JobRow[];
  readonly parts: readonly PartRow[];
  readonly sets: readonly SetRow[];
  readonly knownFaults: readonly object[];
  readonly alignment: readonly object[];
  readonly alignHours: number;
}

const counted = (rows: readonly (readonly [string, number])[]) => rows.map(([part, count]) => ({ part, count }));

/** The work of an invented car line as its family sheet writes it. */
export function workSheetOf(rows: WorkRows): object {
  return {
    limits: rows.limits,
    access: rows.access,
    operations: [
      ...rows.jobs.map((job) => operationOf(job, rows.fasteners)),
      {
        id: "align-four-wheels",
        label: "Four wheels: measure and set the alignment",
        hours: rows.alignHours,
        scope: "car",
        phase: "alignment",
        needs_alignment: true,
        source: INVENTED,
      },
      {
        id: "set-tyre-pressures",
        label: "Four tyres: set the pressures, cold",
        hours: 0.12,
        scope: "car",
        phase: "chassis",
        source: INVENTED,
      },
    ],
    remedies: [
      ...rows.jobs.map((job) => ({
        id: `${job.axle}-${job.id}`,
        label: `${job.label}, ${job.axle}`,
        axle: job.axle,
        cures: job.cures,
        operations: [`${job.verb}-${job.axle}-${job.id}`, ...(job.aligns ? ["align-four-wheels"] : [])],
        parts: counted(job.parts),
        pair: job.pair ?? false,
      })),
      { id: "alignment", label: "Alignment, all four wheels", cures: ["alignment"], operations: ["align-four-wheels"] },
      {
        id: "tyre-pressures",
        label: "Tyre pressures, set cold",
        cures: ["tyre/pressure"],
        operations: ["set-tyre-pressures"],
      },
    ],
    parts: [
      ...rows.parts.map(([id, label, price, kind]) => ({ id, label, price_cents: price, kind: kind ?? "part" })),
      ...rows.sets.map(([id, label, price, contents]) => ({
        id,
        label,
        price_cents: price,
        kind: "set",
        contents: counted(contents),
      })),
    ],
    known_faults: rows.knownFaults,
    alignment: rows.alignment,
  };
}

function operationOf(job: JobRow, fasteners: WorkRows["fasteners"]): object {
  return {
    id: `${job.verb}-${job.axle}-${job.id}`,
    label: `${job.label}, ${job.axle}: ${job.verb}`,
    hours: job.hours,
    scope: job.scope ?? "corner",
    phase: job.phase ?? "chassis",
    access: job.access,
    fasteners: (job.fasteners ?? []).map(([item, count]) => fastenerOf(item, count, fasteners[item])),
    support: job.support ?? "",
    cautions: job.cautions,
    loosens: job.loosens ?? [],
    needs_alignment: job.aligns ?? false,
    source: INVENTED,
  };
}

function fastenerOf(item: string, count: number, row: FastenerRow | undefined): object {
  if (row === undefined) throw new Error(`no fastener ${item} in the demo data`);
  const { label, policy, locker, grease, tight, atRideHeight } = row;
  return {
    item,
    label,
    count,
    policy,
    locker: locker ?? "none",
    grease: grease ?? false,
    ...(tight !== null && {
      stages: [{ torque_nm: tight[0] }, ...(tight[1] === undefined ? [] : [{ angle_deg: tight[1] }])],
    }),
    owner: "maker",
    source: INVENTED,
    at_ride_height: atRideHeight ?? false,
  };
}
