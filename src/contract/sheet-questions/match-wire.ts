import { z } from "zod";
import type { SheetQuestion } from "#casework";
import { degreesFromRadians, metresFromMm, mmFromMetres, radiansFromDegrees } from "#quantity";
import type { Family } from "#vehicle";
import { cornerSchema } from "./place-schema.ts";

const uncertainty = z.number().positive();
const shared = z.number().min(0).default(0);

/** What the sheet of a matched corner is asked with, as it stands in JSON; `u` are standard uncertainties. */
export const matchWire = z.strictObject({
  sheet: z.literal("match"),
  family: z.string(),
  corner: cornerSchema,
  readings: z
    .array(
      z.strictObject({
        travel_mm: z.number(),
        camber_deg: z.number().optional(),
        toe_deg: z.number().optional(),
      }),
    )
    .max(40),
  lengths: z
    .array(z.strictObject({ link: z.string(), length_mm: z.number().positive() }))
    .max(20)
    .default([]),
  u: z.strictObject({
    travel_mm: uncertainty,
    camber_deg: uncertainty,
    toe_deg: uncertainty,
    length_mm: uncertainty.default(0.5),
    height_base_mm: shared,
    body_base_mm: shared,
  }),
});

type AskedMatch = Extract<SheetQuestion, { kind: "match" }>;

const radiansOf = (degrees: number | undefined) => (degrees === undefined ? null : radiansFromDegrees(degrees));

/** The question of a sheet of a matched corner, its family found. */
export const readMatch = ({ corner, readings, lengths, u }: z.infer<typeof matchWire>, family: Family): AskedMatch => ({
  kind: "match",
  question: {
    family,
    corner,
    readings: readings.map(({ travel_mm, camber_deg, toe_deg }) => ({
      travel: metresFromMm(travel_mm),
      camber: radiansOf(camber_deg),
      toe: radiansOf(toe_deg),
    })),
    lengths: lengths.map(({ link, length_mm }) => ({ link, length: metresFromMm(length_mm) })),
    u: {
      travel: metresFromMm(u.travel_mm),
      camber: radiansFromDegrees(u.camber_deg),
      toe: radiansFromDegrees(u.toe_deg),
      length: metresFromMm(u.length_mm),
      heightBase: metresFromMm(u.height_base_mm),
      bodyBase: metresFromMm(u.body_base_mm),
    },
  },
});

/** The same as it is sent. */
export const formatMatch = ({ question: { family, corner, readings, lengths, u } }: AskedMatch) =>
  ({
    sheet: "match",
    family: family.id,
    corner,
    readings: readings.map(({ travel, camber, toe }) => ({
      travel_mm: mmFromMetres(travel),
      ...(camber === null ? {} : { camber_deg: degreesFromRadians(camber) }),
      ...(toe === null ? {} : { toe_deg: degreesFromRadians(toe) }),
    })),
    lengths: lengths.map(({ link, length }) => ({ link, length_mm: mmFromMetres(length) })),
    u: {
      travel_mm: mmFromMetres(u.travel),
      camber_deg: degreesFromRadians(u.camber),
      toe_deg: degreesFromRadians(u.toe),
      length_mm: mmFromMetres(u.length),
      height_base_mm: mmFromMetres(u.heightBase),
      body_base_mm: mmFromMetres(u.bodyBase),
    },
  }) satisfies z.input<typeof matchWire>;

/** Keys of a reading as casework names them -> as a sender wrote them. */
const UNITS: Readonly<Record<string, string>> = {
  travel: "travel_mm",
  camber: "camber_deg",
  toe: "toe_deg",
  length: "length_mm",
};

/** "readings[2].toe" as a sender knows it. */
export const matchPath = (path: string): string =>
  path.replace(/(?<=^(?:readings|lengths)\[\d+\]\.)\w+$/, (key) => UNITS[key] ?? key);
