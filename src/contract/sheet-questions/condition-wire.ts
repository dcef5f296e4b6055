import { z } from "zod";
import type { Condition } from "#casework";
import { metresFromMm, mmFromMetres } from "#quantity";

/** Where a corner stands and what pushes it, as it stands in JSON; what is left out is 0. */
export const conditionWire = z.strictObject({
  contact_rise_mm: z.number().default(0),
  rack_mm: z.number().default(0),
  braking_n: z.number().default(0),
  lateral_n: z.number().default(0),
  drive_n: z.number().default(0),
});

/** A condition in SI. */
export const readCondition = (at: z.infer<typeof conditionWire>): Condition => ({
  contactRise: metresFromMm(at.contact_rise_mm),
  rack: metresFromMm(at.rack_mm),
  braking: at.braking_n,
  lateral: at.lateral_n,
  drive: at.drive_n,
});

/** The same as it is sent. */
export const formatCondition = (at: Condition): z.infer<typeof conditionWire> => ({
  contact_rise_mm: mmFromMetres(at.contactRise),
  rack_mm: mmFromMetres(at.rack),
  braking_n: at.braking,
  lateral_n: at.lateral,
  drive_n: at.drive,
});
