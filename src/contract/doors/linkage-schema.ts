import { z } from "zod";

/** No point of a car lies further from the origin; larger figures are slips of unit (invented bound, mm). */
const FARTHEST_MM = 20_000;
/** No length of a car that a figure is divided by is smaller (invented bound, mm). */
const LEAST_MM = 1;
/** A rate or a share of one below this is nought: what it holds would drown in the arithmetic (invented bound, N/mm, N m/deg or share). */
const LEAST_RATE = 1e-6;
/** A rate in the unit of its key; one that is nought, or as good as nought, holds nothing. */
export const rateNumber = z.number().min(LEAST_RATE);
const coordinate = z.number().min(-FARTHEST_MM).max(FARTHEST_MM);
const lengthMm = z.number().min(LEAST_MM).max(FARTHEST_MM);

/** A point [x, y, z] in mm, vehicle frame: x forward, y left, z up. */
export const pointMm = z
  .tuple([coordinate, coordinate, coordinate])
  .meta({ description: "x forward, y left, z up", unit: "mm" });

export const axisSchema = z
  .tuple([z.number(), z.number(), z.number()])
  .meta({ description: "direction fixed in the body, any length but zero" });

export const linkSchema = z.strictObject({
  name: z.string().min(1).max(80),
  inner_mm: pointMm,
  outer_mm: pointMm,
  steered: z.boolean().default(false).meta({ description: "inner end moves with the rack" }),
});

export const wheelSchema = z.strictObject({
  centre_mm: pointMm,
  camber_deg: z.number().gt(-45).lt(45).meta({ description: "positive top outward" }),
  toe_deg: z.number().gt(-45).lt(45).meta({ description: "positive in" }),
  loaded_radius_mm: lengthMm,
});

export const strutSchema = z.strictObject({
  top_mm: pointMm,
  axis_point_mm: pointMm,
});

export const trailingArmSchema = z.strictObject({
  bush_mm: pointMm,
  free_axis: axisSchema.nullish(),
});

const onSchema = z
  .union([z.string().min(1), z.tuple([z.string().min(1), z.string().min(1)])])
  .meta({ description: 'a link\'s name, two names (the rigid arm of two links with one outer joint) or "knuckle"' });

export const seatKeys = {
  body_mm: pointMm,
  on: onSchema,
  moving_mm: pointMm.optional(),
  fraction: z.number().gt(0).max(2).optional().meta({ description: "of the link's line, from its inner end" }),
};

export const seatSchema = z.strictObject(seatKeys);
export const springSchema = z.strictObject({ ...seatKeys, rate_n_per_mm: rateNumber });

export const axleName = z.enum(["front", "rear"]);

export const carSchema = z.strictObject({
  axle: axleName.optional(),
  wheelbase_mm: lengthMm,
  cg_height_mm: lengthMm,
  brake_share: z.number().min(0).max(1),
  drive_share: z.number().min(0).max(1),
});

/** Keys of one corner's geometry, shared by the linkage doors. */
export const cornerKeys = {
  side: z.enum(["left", "right"]).default("left"),
  links: z.array(linkSchema).max(20),
  strut: strutSchema.optional(),
  trailing_arm: trailingArmSchema.optional(),
  wheel: wheelSchema,
};

const rates = {
  radial_n_per_mm: rateNumber,
  axial_n_per_mm: rateNumber.optional(),
  axis: axisSchema.optional(),
  voided_n_per_mm: rateNumber
    .optional()
    .meta({ description: "rate across the axis through the voids; radial_n_per_mm then holds across both" }),
  clocking_deg: z.number().min(-360).max(360).optional().meta({
    description:
      "where the voids lie: turned about the axis as given, right-handed, from up; about an axis more upright than level, from forward",
  }),
  conical_nm_per_deg: rateNumber.optional().meta({ description: "moment against tilting the axis" }),
  torsional_nm_per_deg: rateNumber.optional().meta({ description: "moment against turning about the axis" }),
};

export const rubberSchema = z.strictObject({
  link: z.string().min(1),
  end: z.enum(["inner", "outer"]).optional(),
  ...rates,
});

export const memberSchema = z.strictObject({ link: z.string().min(1), n_per_mm: rateNumber });

export const softSchema = z.strictObject({
  link: z.string().min(1),
  kind: z.literal("soft"),
  end: z.enum(["inner", "outer"]).optional(),
  factor: rateNumber,
});

export const playSchema = z.strictObject({
  link: z.string().min(1),
  kind: z.literal("play"),
  total_mm: z.number().min(0),
});

export type WireRubber = z.output<typeof rubberSchema>;
export type WireSeat = z.output<typeof seatSchema>;
export type WireFault = z.output<typeof softSchema> | z.output<typeof playSchema>;
export type WireCorner = z.output<ReturnType<typeof cornerObject>>;

/** The geometry keys alone as an object schema. */
export function cornerObject() {
  return z.strictObject(cornerKeys);
}
