import { z } from "zod";
import { symptoms } from "#casework";
import { moment, orNothing, person, recordId, uuidV7 } from "../cases/case-words.ts";
import { documentBodies } from "../cases/document-schemas.ts";
import { lookFields } from "../cases/look-schema.ts";
import { hyphenName } from "../family/figure-schema.ts";
import { silhouetteSheet } from "../family/silhouette-sheet.ts";

export const VISIT_FORMAT = "underbench-visit-1";
/** More looks than one car gathers in its life (invented bound). */
const MOST_LOOKS = 20_000;

const look = z
  .strictObject({
    ...lookFields,
    id: uuidV7.optional().meta({ description: "UUID of version 7; needed only where another look withdraws it." }),
    car: recordId.optional().meta({ description: "The car; absent: the one of this file." }),
    visit: recordId.optional().meta({ description: "The visit; absent: the one of this list." }),
    who: person.optional().meta({ description: "Who looked; absent: who began the visit." }),
    at: moment.optional().meta({ description: "When, with the offset from UTC; absent: the day of the visit." }),
    confirmed: z.boolean().default(false).meta({ description: "True where a figure looks odd and stands." }),
    received_at: moment.optional().meta({ description: "As the records give it out; not needed." }),
    clock_off: z.boolean().optional().meta({ description: "As the records give it out; not needed." }),
    sequence: z.number().int().min(0).optional().meta({ description: "As the records give it out; not needed." }),
  })
  .meta({ id: "look", description: "One act of looking or measuring at a place, in the order they were done." });

const looks = z.array(look).max(MOST_LOOKS);

/** The family: one on file, or inline. The sheet's own keys are read by the reader of family sheets. */
const family = z.discriminatedUnion("kind", [
  z.strictObject({
    kind: z.literal("on-file").meta({ description: "A family of the workshop, or one that comes with the program." }),
    id: hyphenName.meta({ description: "Its id." }),
  }),
  z.strictObject({
    kind: z.literal("sheet").meta({ description: "The family's data sheet, whole." }),
    sheet: z.looseObject({}).meta({ description: "In the form of docs/family.schema.json." }),
  }),
  z.strictObject({
    kind: z.literal("silhouette").meta({ description: "A car nobody has measured." }),
    silhouette: silhouetteSheet,
  }),
]);

const { car, visit, enquiry, plan, "job-card": jobCard, "hand-over": handOver, settings } = documentBodies;

const complaint = enquiry.shape.symptoms.element.extend({
  symptom: z
    .enum(symptoms.map((s) => s.id) as [string, ...string[]])
    .meta({ description: "A complaint of the table." }),
});

const ratesOf = settings
  .pick({ workshop: true, currency: true, labour_cents_per_hour: true, tax_share: true, visit_cents: true })
  .meta({ description: "Shop rates: money in hundredths of the currency; tax as a share." });

/** Every key of a visit file. */
const shape = {
  format: z.literal(VISIT_FORMAT).meta({ description: "Form and version of this file." }),
  note: z.string().max(4000).optional().meta({ description: "Anything a reader must know." }),
  car: car
    .omit({ family: true })
    .extend({
      registration: car.shape.registration.default(""),
      variants: car.shape.variants.default([]),
      distance_unit: car.shape.distance_unit.default("km"),
      odometer_offset_km: car.shape.odometer_offset_km.default(0),
      invented: z.boolean().default(false),
    })
    .meta({ description: "The car." }),
  family: orNothing(family).meta({
    description: "Its car line: on file, as a sheet, or as a silhouette; null: not chosen, then nothing is judged.",
  }),
  rates: ratesOf,
  visit: visit
    .extend({
      car: recordId.default("car"),
      done: visit.shape.done.default([]),
      waits: visit.shape.waits.default([]),
      closed: z.boolean().default(false),
    })
    .meta({ description: "The visit." }),
  enquiry: orNothing(enquiry.extend({ symptoms: z.array(complaint).max(500) })).meta({
    description: "The owner's words and complaints.",
  }),
  looks: looks.default([]).meta({ description: "Looks of this visit." }),
  looks_before: looks.default([]).meta({ description: "Looks of the visits before." }),
  plan: orNothing(plan).meta({
    description: "Visits, what is agreed and declined; null: nobody has changed the plan.",
  }),
  job_card: orNothing(jobCard).meta({ description: "Steps that are signed." }),
  hand_over: orNothing(handOver).meta({ description: "What was passed over, taught and signed." }),
};

/** A visit file as it is read: the family's sheet is looked at by its own reader. */
export const visitFile = z.strictObject(shape).meta({
  title: "Visit file",
  description:
    "One visit of one car in one file. Units stand in the keys; places are positions such as rear-left/trailing-link/inner-bush.",
});
export type VisitFileSheet = z.output<typeof visitFile>;
export type LookInFile = VisitFileSheet["looks"][number];

/** The published JSON Schema (draft 2020-12) of a visit file; a copy stands in docs/visit.schema.json. */
export function visitJsonSchema(): Record<string, unknown> {
  return { ...z.toJSONSchema(visitFile, { target: "draft-2020-12", io: "input" }) };
}
