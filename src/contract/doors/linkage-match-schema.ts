import { z } from "zod";
import { cornerKeys } from "./linkage-schema.ts";

const sd = z.number().min(0).max(1000);
const sdMm = z.strictObject({ x: sd, y: sd, z: sd }).meta({ description: "standard deviations", unit: "mm" });
const pointName = z
  .string()
  .min(1)
  .max(100)
  .meta({ description: '"link.inner", "link.outer", "strut.top", "strut.axis_point" or "trailing_arm.bush"' });
const travel = z.number().min(-1000).max(1000);
const angle = z.number().gt(-45).lt(45);
const u = z.number().min(1e-6).max(1000).meta({ description: "standard uncertainty" });

const wheelReading = z.strictObject({
  travel_mm: travel.meta({ description: "wheel centre above its design height against the body" }),
  travel_u_mm: z.number().min(0).max(1000).default(0),
  camber_deg: angle.optional(),
  camber_u_deg: u.optional(),
  toe_deg: angle.optional(),
  toe_u_deg: u.optional(),
});

/** Points measured from one base. */
export const oneBase = z
  .array(z.strictObject({ points: z.array(pointName).min(2).max(60), sd_mm: sdMm }))
  .max(20)
  .default([])
  .meta({ description: "points measured from one base, which share its error beside their own" });

/** Geometries drawn and solved in full. */
export const drawsSchema = z.strictObject({
  count: z.int().min(2).max(2000),
  seed: z.int().min(0).max(4_294_967_295),
});

export const matchInput = z.strictObject({
  ...cornerKeys,
  sd_mm: sdMm.meta({ description: "of every point that is not named below", unit: "mm" }),
  points: z
    .array(z.strictObject({ point: pointName, sd_mm: sdMm }))
    .max(60)
    .default([]),
  one_base: oneBase,
  readings: z.array(wheelReading).max(100).default([]),
  lengths: z
    .array(z.strictObject({ link: z.string().min(1).max(80), length_mm: z.number().positive().max(20_000), u_mm: u }))
    .max(40)
    .default([]),
  travels_mm: z.array(travel).min(1).max(200),
  draws: drawsSchema.optional(),
});

/** A figure over the drawn geometries. */
const drawn = z
  .strictObject({ mean: z.number(), sd: z.number(), low: z.number(), high: z.number(), share_above: z.number() })
  .meta({ description: "deg; low to high hold the middle 95 %" });
/** Changes over the drawn geometries; null where fewer than two reach the travel. */
export const drawnChanges = z
  .strictObject({ camber_change: drawn, toe_change: drawn, unreachable: z.number() })
  .nullable();
const change = z.strictObject({
  before_deg: z.number(),
  before_sd_deg: z.number(),
  deg: z.number(),
  sd_deg: z.number(),
  sign_probability: z.number().nullable(),
});

export const matchOutput = z.strictObject({
  positions: z.array(
    z.strictObject({
      travel_mm: z.number(),
      camber_change: change,
      toe_change: change,
      drawn: drawnChanges.optional(),
    }),
  ),
  points: z.array(
    z.strictObject({
      point: z.string(),
      shift_mm: z.tuple([z.number(), z.number(), z.number()]),
      sd_mm: z.tuple([z.number(), z.number(), z.number()]),
    }),
  ),
  readings: z.array(
    z.strictObject({
      reading: z.string(),
      observed: z.number(),
      fitted: z.number(),
      contradiction: z.number(),
    }),
  ),
  settled: z.number(),
  chi_squared: z.number(),
  degrees_of_freedom: z.number(),
  report: z.strictObject({ end: z.string(), iterations: z.number(), residual: z.number() }),
});

export type MatchInput = z.output<typeof matchInput>;
export type MatchOutput = z.output<typeof matchOutput>;
