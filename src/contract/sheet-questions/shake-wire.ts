import { z } from "zod";
import type { SheetQuestion } from "#casework";
import { kmPerHourFromMetresPerSecond, metresFromMm, metresPerSecondFromKmPerHour, mmFromMetres } from "#quantity";
import type { Family } from "#vehicle";
import { cornerSchema } from "./place-schema.ts";

/** What the sheet of a bush without its fluid is asked with, as it stands in JSON. */
export const shakeWire = z.strictObject({
  sheet: z.literal("shake"),
  family: z.string(),
  corner: cornerSchema,
  position: z.string(),
  variation_mm: z.number().positive().optional(),
  speed_kmh: z.number().positive().optional(),
});

type AskedShake = Extract<SheetQuestion, { kind: "shake" }>;

/** The question of a sheet of shake, its family found. */
export const readShake = (
  { corner, position, variation_mm, speed_kmh }: z.infer<typeof shakeWire>,
  family: Family,
): AskedShake => ({
  kind: "shake",
  family,
  question: {
    corner,
    position,
    ...(variation_mm === undefined ? {} : { variation: metresFromMm(variation_mm) }),
    ...(speed_kmh === undefined ? {} : { speed: metresPerSecondFromKmPerHour(speed_kmh) }),
  },
});

/** The same as it is sent. */
export const formatShake = ({ family, question }: AskedShake): z.input<typeof shakeWire> => ({
  sheet: "shake",
  family: family.id,
  corner: question.corner,
  position: question.position,
  ...(question.variation === undefined ? {} : { variation_mm: mmFromMetres(question.variation) }),
  ...(question.speed === undefined ? {} : { speed_kmh: Math.round(kmPerHourFromMetresPerSecond(question.speed)) }),
});
