import { z } from "zod";
import { checkPlanVisits, type DocumentKind, type Stage } from "#casework";
import {
  cents,
  day,
  freeText,
  line,
  moment,
  odometer,
  orNothing,
  person,
  recordId,
  shortText,
  tableKey,
} from "./case-words.ts";

const stages: Readonly<Record<Stage, true>> = {
  enquiry: true,
  car: true,
  readings: true,
  underside: true,
  findings: true,
  options: true,
  plan: true,
  "job-card": true,
  "hand-over": true,
};
const stage = z.enum(Object.keys(stages) as [Stage, ...Stage[]]);
const choice = z.strictObject({ label: line, choice: line, known: z.boolean() });
const many = <T extends z.ZodType>(schema: T): z.ZodArray<T> => z.array(schema).max(500);

const car = z.strictObject({
  registration: shortText,
  name: line,
  year: orNothing(z.number().int().min(1900).max(2200)),
  identity_number: orNothing(line),
  owner: orNothing(line),
  family: orNothing(recordId),
  variants: many(choice),
  distance_unit: z.enum(["km", "mi"]),
  odometer_offset_km: odometer,
  invented: z.boolean(),
});

const wait = z.strictObject({
  what: z.enum(["part", "owner", "stand", "person"]),
  label: line,
  since: z.union([moment, day]),
  due: orNothing(z.union([moment, day])),
});

/** Between what the minimum stamped on a disc lies, mm (from memory). */
const stampedMm = z.number().min(3).max(45);

const visit = z.strictObject({
  car: recordId,
  odometer_km: orNothing(odometer),
  date: day,
  by: person,
  bay: orNothing(line),
  done: many(stage),
  waits: many(wait),
  settled: orNothing(z.boolean()),
  disc_minimum_mm: z
    .strictObject({ front: orNothing(stampedMm), rear: orNothing(stampedMm) })
    .optional()
    .meta({
      description: "Least thickness stamped on the discs of each axle; held against readings as its maker's limit.",
    }),
  closed: z.boolean(),
});

const speed = z.number().min(0).max(400);
const symptom = z.strictObject({
  symptom: tableKey,
  side: z.enum(["left", "right", "both", "unknown"]),
  axle: z.enum(["front", "rear", "unknown"]),
  conditions: z.strictObject({
    speed_kph: orNothing(z.tuple([speed, speed])),
    temperature: orNothing(z.enum(["cold", "warm", "any"])),
    load: orNothing(z.enum(["empty", "laden", "any"])),
    steering: orNothing(z.enum(["straight", "left", "right", "lock"])),
    braking: orNothing(z.enum(["none", "light", "firm"])),
  }),
  since: orNothing(freeText),
});

const suspectWord = z.strictObject({
  cause: tableKey,
  word: z.enum(["accepted", "ruled-out", "open"]),
  reason: orNothing(freeText),
  by: person,
  at: moment,
});

const enquiry = z.strictObject({
  words: freeText,
  symptoms: many(symptom),
  use: orNothing(line),
  suspects: many(suspectWord).optional().meta({
    description: "What was said of suspects, oldest first; the last word on a cause counts.",
  }),
});

const plan = z
  .strictObject({
    visits: many(
      z.strictObject({
        label: line,
        odometer_km: odometer,
        date: day
          .optional()
          .meta({ description: "The day it was agreed for; absent: estimated from how far the car goes in a year." }),
      }),
    ),
    declined: many(line),
    agreed: many(z.strictObject({ remedy: line, by: person, at: moment })),
    fixed: many(z.strictObject({ remedy: line, visit: z.number().int().min(0).max(499) })),
    horizon_km: odometer,
  })
  .superRefine(({ visits, fixed, horizon_km }, ctx) => {
    const listed = visits.map(({ label, odometer_km }) => ({ label, odometerKm: odometer_km }));
    for (const { code, visit: at, got, needed, where } of checkPlanVisits(
      { visits: listed, fixed, horizonKm: horizon_km },
      null,
    ))
      ctx.addIssue({
        code: "custom",
        path: at !== null ? ["visits", at, "odometer_km"] : [code === "plan-horizon" ? "horizon_km" : "visits"],
        message: needed,
        params: { finding: { code, got, hint: `${where}.` } },
      });
  });

const jobCard = z.strictObject({
  steps: many(
    z.strictObject({
      step: line,
      done_by: person,
      at: moment,
      hub_to_arch_mm: orNothing(z.number().min(0).max(2000)),
      torque_nm: orNothing(z.number().min(0).max(2000)),
      note: orNothing(freeText),
    }),
  ),
});

const handOver = z.strictObject({
  overrides: many(z.strictObject({ gate: line, reason: freeText, by: person, at: moment })),
  taught: many(z.strictObject({ item: line, state: z.enum(["done", "not-needed", "look-up"]), by: person })),
  signed_by: orNothing(person),
  signed_at: orNothing(moment),
  received_by: orNothing(person),
});

const settings = z.strictObject({
  workshop: shortText,
  currency: line,
  labour_cents_per_hour: cents,
  tax_share: z.number().min(0).max(1),
  visit_cents: cents,
  units: z.strictObject({
    distance: z.enum(["km", "mi"]),
    length: z.enum(["mm", "in"]),
    torque: z.enum(["nm", "lbft"]),
    angle: z.enum(["deg", "deg-min"]),
    pressure: z.enum(["bar", "psi"]),
  }),
  invented: z.boolean(),
});

const carLine = z.strictObject({ off_list: z.boolean() });

/** The body of each kind of document as it stands in JSON. */
export const documentBodies = {
  car,
  visit,
  enquiry,
  plan,
  "job-card": jobCard,
  "hand-over": handOver,
  settings,
  "car-line": carLine,
} as const satisfies Readonly<Record<DocumentKind, z.ZodType>>;

/** Every kind of document. */
export const documentKinds = Object.keys(documentBodies) as [DocumentKind, ...DocumentKind[]];

/** The body of a document of one kind as its schema accepts it. */
export type WireBody<K extends DocumentKind> = z.output<(typeof documentBodies)[K]>;
/** The body of a document of one kind as it may be sent: what has nothing to say may be left out. */
export type DocumentSheet<K extends DocumentKind> = z.input<(typeof documentBodies)[K]>;

/** The schema of the body of one kind of document. */
export const bodySchema = <K extends DocumentKind>(kind: K): z.ZodType<WireBody<K>> =>
  documentBodies[kind] as unknown as z.ZodType<WireBody<K>>;
