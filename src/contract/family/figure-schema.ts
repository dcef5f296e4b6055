import { z } from "zod";

/** Farther from the origin than any part of a car; a coordinate beyond it is a slip (invented bound). */
const FARTHEST_MM = 10_000;
/** Stiffer than any joint or member of a car, in N/mm (invented bound). */
const STIFFEST_N_PER_MM = 10_000_000;

/** A coordinate or signed length in millimetres. */
export const coordinateMm = z.number().min(-FARTHEST_MM).max(FARTHEST_MM);
/** A length in millimetres that must be more than nothing. */
export const lengthMm = z.number().positive().max(FARTHEST_MM);
/** A rate in newtons per millimetre that must be more than nothing. */
export const rateNPerMm = z.number().positive().max(STIFFEST_N_PER_MM);
/** A share of a whole, 0 to 1. */
export const share = z.number().min(0).max(1);
/** A mass in kilograms. */
export const massKg = z.number().positive().max(10_000);
/** Words for a person: not empty, no novel. */
export const words = z.string().min(1).max(400);
/** A name other places refer to: lower-case words joined by hyphens. */
export const hyphenName = z
  .string()
  .max(60)
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, "lower-case words joined by hyphens, such as lower-rear-link");

/** [x, y, z] in millimetres: x forward from the front axle, y left from the centre line, z up from the design ground. */
export const placeMm = z.tuple([coordinateMm, coordinateMm, coordinateMm]);
/** [x, y, z] of a direction in the same axes; its length does not count. */
export const direction = z.tuple([
  z.number().min(-FARTHEST_MM).max(FARTHEST_MM),
  z.number().min(-FARTHEST_MM).max(FARTHEST_MM),
  z.number().min(-FARTHEST_MM).max(FARTHEST_MM),
]);
/** Standard deviations along x, y and z in millimetres. */
export const deviationMm = z.tuple([
  z.number().min(0).max(1000),
  z.number().min(0).max(1000),
  z.number().min(0).max(1000),
]);
/** Closed outline as seen from below, [x, y] in millimetres. */
export const outlineMm = z
  .array(z.tuple([coordinateMm, coordinateMm]))
  .min(3)
  .max(200);

export const originWord = z
  .enum(["template", "invented", "drawing", "level-plane", "tape", "bench", "maker", "practice", "guess"])
  .meta({
    description:
      "Where a figure comes from: template (of the layout), invented, drawing, level-plane (height over a level plane), tape, bench (part off the car), maker, practice, guess.",
  });
