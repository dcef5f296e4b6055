import { z } from "zod";
import { bodiesKeys, rubber } from "../doors/bodies-schema.ts";
import { layoutSheet } from "../layout/index.ts";
import { deviationMm, originWord, share } from "./figure-schema.ts";
import { tornShare } from "./joint-schema.ts";

const wheelShape = layoutSheet.shape.wheel;

/** One range for the worst grade, as a file of a layout gives it. */
const worstShare = z.strictObject({ low: share, high: share, origin: z.string().min(1).max(80).optional() });

/**
 * A linkage of several bodies inside an axle of a family sheet: a file of a layout as linkage.bodies-compliance takes it,
 * without what the car line says itself, and with how single points and places are known.
 */
export const bodiesBlock = z.strictObject({
  ...bodiesKeys,
  layout: layoutSheet.extend({
    wheel: wheelShape.partial({ centre_mm: true, camber_deg: true, toe_deg: true, loaded_radius_mm: true }),
  }),
  wheel_load_n: z.number().positive().max(1e6).optional(),
  unsprung_kg: z.number().min(0).max(1e4).optional(),
  droop_stop_mm: z.number().min(0).max(500).optional(),
  rubber: z
    .array(
      rubber.extend({
        kind: z.enum(["bush", "hydraulic-bush", "ball-joint"]).optional(),
        rate_sd_share: z.number().min(0).max(2).optional(),
        rate_origin: originWord.optional(),
        hardness_shore_a: z.number().min(10).max(95).optional(),
        torn_share: tornShare.optional(),
      }),
    )
    .max(60)
    .default([]),
  sd_mm: z
    .strictObject({ x: z.number().min(0).max(1000), y: z.number().min(0).max(1000), z: z.number().min(0).max(1000) })
    .optional(),
  known_points: z
    .array(
      z.strictObject({
        point: z.string().min(1).max(80),
        sd_mm: deviationMm.optional(),
        origin: originWord.optional(),
      }),
    )
    .max(200)
    .default([]),
  torn_share: worstShare.optional(),
});

export type BodiesBlock = z.output<typeof bodiesBlock>;
export type BlockRubber = BodiesBlock["rubber"][number];
/** Where the rubber of a block sits, as people and positions name it. */
export type BlockPlace = Pick<BlockRubber, "part" | "end">;
