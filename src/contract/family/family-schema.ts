import { z } from "zod";
import { assumableFigures } from "#vehicle";
import { axleSheet } from "./axle-schema.ts";
import { hyphenName, lengthMm, massKg, share, words } from "./figure-schema.ts";
import { workSheet } from "./work-schema.ts";

export const FAMILY_FORMAT = "underbench-family-1";

const variant = z
  .strictObject({
    label: words.meta({ description: "What differs: Front brake." }),
    key: words.meta({ description: "What tells it: a code, or what eye and calliper show." }),
    choices: z
      .array(
        z.strictObject({
          label: words.meta({ description: "What stands there: 25 mm." }),
          code: words.meta({ description: "Its code." }),
        }),
      )
      .min(2)
      .max(20)
      .meta({ description: "What may stand there." }),
  })
  .meta({
    id: "variant",
    description: "A difference inside the family and the key that tells which one stands there.",
  });

const distanceKm = z.number().min(0).max(2_000_000);
export const practiceLife = z
  .strictObject({
    position: words.meta({ description: "A position without its side: front/lower-arm/rear-bush." }),
    low_km: distanceKm.meta({ description: "Distance by which the first tenth is gone, in km." }),
    middle_km: distanceKm.meta({ description: "Distance by which half are gone, in km." }),
    high_km: distanceKm.meta({ description: "Distance by which nine tenths are gone, in km." }),
    source: words.meta({ description: "Whose experience." }),
  })
  .meta({ id: "practice_life", description: "How long a position lasts, from practice." });

const year = z.int().min(1900).max(2200);

/** Every key of a family sheet. */
export const familyShape = {
  format: z.literal(FAMILY_FORMAT).meta({ description: "Form and version of this file." }),
  id: hyphenName.meta({ description: "Lower-case words joined by hyphens; unique in the workshop." }),
  name: words.meta({ description: "What the workshop calls this car line." }),
  from_year: year.optional().meta({ description: "First year of build." }),
  to_year: year.optional().meta({ description: "Last year of build." }),
  invented: z
    .boolean()
    .optional()
    .meta({ description: "True for a car that does not exist; every page and paper says so. Absent: false." }),
  note: z.string().max(4000).optional().meta({ description: "Anything a reader must know." }),
  assumed: z
    .array(z.enum(assumableFigures))
    .max(assumableFigures.length)
    .optional()
    .meta({ description: "Figures nobody has entered; every page and paper calls them assumed. Absent: none." }),
  wheelbase_mm: lengthMm.meta({ description: "Distance between the axles in mm." }),
  kerb_mass_kg: massKg.meta({ description: "Mass of the empty car ready to drive, in kg." }),
  front_weight_share: share.meta({ description: "Share of the kerb mass on the front axle." }),
  cg_height_mm: lengthMm.meta({ description: "Height of the centre of mass above the ground in mm." }),
  front: axleSheet,
  rear: axleSheet,
  variants: z.array(variant).max(100).optional().meta({ description: "What differs inside the family." }),
  life: z.array(practiceLife).max(500).optional().meta({ description: "How long positions last, from practice." }),
  work: workSheet.optional(),
};

/** The data sheet of a family as it stands in a file. */
export const familySheet = z.strictObject(familyShape).meta({
  title: "Family data sheet",
  description:
    "A car line that shares chassis data. Lengths in mm, angles in degrees, rates in N/mm; x forward from the front axle, y left, z up from the design ground; left side, mirrored for the right.",
});

export type FamilySheet = z.infer<typeof familySheet>;
