import { z } from "zod";
import type { BranchEnd, TravelFold, TravelPosition } from "#engines/linkage";
import type { Vector } from "#numeric";
import { degreesFromRadians } from "#quantity";
import { pointToWire, sideways } from "./linkage-reading.ts";
import type { carSchema } from "./linkage-schema.ts";

const point = z.tuple([z.number(), z.number(), z.number()]);
const pair = z.tuple([z.number(), z.number()]).nullable();

/** What every door says of one solved position. */
export const positionKeys = {
  wheel_centre_mm: point,
  contact_mm: point,
  camber_deg: z.number(),
  toe_deg: z.number(),
  spin_deg: z.number(),
  camber_gain_deg_per_m: z.number(),
  toe_gain_deg_per_m: z.number(),
  steering_axis_held: z.enum(["spring_length", "wheel_centre_height"]).optional(),
  caster_deg: z.number().optional(),
  inclination_deg: z.number().optional(),
  trail_mm: z.number().optional(),
  scrub_mm: z.number().optional(),
  front_view_centre_mm: pair,
  side_view_centre_mm: pair,
  roll_centre_height_mm: z.number(),
  roll_centre_height_construction_mm: z.number(),
  anti_dive_percent: z.number().optional(),
  anti_squat_percent: z.number().optional(),
  spring_ratio: z.number().optional(),
  damper_ratio: z.number().optional(),
  closure_mm: z.number(),
};

/** A joint that locks at a fold. */
const lockedJoint = z.strictObject({
  joint: z.string(),
  share: z.number().meta({ description: "its force as a share of the largest; they grow without bound together" }),
});

/** What linkage.travel says of a position beyond the end of the branch: two keys and no more. */
export const refusedTravel = z.strictObject({
  refused: z.strictObject({
    code: z.enum(["beyond-fold", "rack-beyond-fold"]),
    fold_travel_mm: z.number().nullable(),
  }),
});

/** What the other doors say of it: where the rack ends and what locks there too. */
export const refusedPosition = z.strictObject({
  refused: z.strictObject({
    code: z.enum(["beyond-fold", "rack-beyond-fold"]),
    fold_travel_mm: z.number().nullable(),
    fold_rack_mm: z.number().optional(),
    joints: z.array(lockedJoint),
  }),
});

/** Where a branch ends, and what locks there. */
export const branchEnd = z.strictObject({ at_mm: z.number(), joints: z.array(lockedJoint) }).nullable();

/** A branch's end, lengths in metres. */
export function formatEnd(end: BranchEnd | null): z.output<typeof branchEnd> {
  return end && { at_mm: end.at * 1000, joints: [...end.joints] };
}

type WirePosition = z.output<z.ZodObject<typeof positionKeys>>;

/** The corner a position belongs to, as the doors are told of it. */
export interface PositionOf {
  readonly side: "left" | "right";
  readonly axle?: "front" | "rear" | undefined;
  readonly car?: z.output<typeof carSchema> | undefined;
}

/** A solved position with units in its keys, on the side it was asked for. */
export function formatPosition(p: TravelPosition, { side, car, axle: onTop }: PositionOf): WirePosition {
  const { attitude } = p;
  const steering = p.steering ? (p.steering.springHeld ?? p.steering.heightHeld) : null;
  const axle = onTop ?? car?.axle;
  const lift = car && axle ? (100 * (axle === "front" ? 1 : -1) * car.wheelbase_mm) / car.cg_height_mm : null;
  const mm = (v: Vector) => pointToWire(v, side) as [number, number, number];
  return {
    wheel_centre_mm: mm(attitude.centre),
    contact_mm: mm(attitude.contact),
    camber_deg: degreesFromRadians(attitude.camber),
    toe_deg: degreesFromRadians(attitude.toe),
    spin_deg: degreesFromRadians(attitude.spin),
    camber_gain_deg_per_m: degreesFromRadians(p.camberGain),
    toe_gain_deg_per_m: degreesFromRadians(p.toeGain),
    ...(steering
      ? {
          steering_axis_held: p.steering?.springHeld ? ("spring_length" as const) : ("wheel_centre_height" as const),
          caster_deg: degreesFromRadians(steering.caster),
          inclination_deg: degreesFromRadians(steering.inclination),
          trail_mm: steering.trail * 1000,
          scrub_mm: steering.scrub * 1000,
        }
      : {}),
    front_view_centre_mm: p.frontViewCentre && [
      sideways(p.frontViewCentre[0], side) * 1000,
      p.frontViewCentre[1] * 1000,
    ],
    side_view_centre_mm: p.sideViewCentre && [p.sideViewCentre[0] * 1000, p.sideViewCentre[1] * 1000],
    roll_centre_height_mm: p.rollCentreMigrating * 1000,
    roll_centre_height_construction_mm: p.rollCentreConstruction * 1000,
    ...(lift !== null && car
      ? {
          anti_dive_percent: lift * car.brake_share * p.brakeSlope,
          anti_squat_percent: lift * car.drive_share * p.driveSlope,
        }
      : {}),
    ...(p.springRatio !== null ? { spring_ratio: p.springRatio } : {}),
    ...(p.damperRatio !== null ? { damper_ratio: p.damperRatio } : {}),
    closure_mm: p.closure * 1000,
  };
}

/** A step beyond the end of the branch as linkage.travel says it. */
export function formatRefusedTravel(answer: TravelFold): z.output<typeof refusedTravel> {
  return answer.on === "rack"
    ? { refused: { code: "rack-beyond-fold", fold_travel_mm: null } }
    : { refused: { code: "beyond-fold", fold_travel_mm: answer.foldAt * 1000 } };
}

/** The same with the place of the rack and the joints that lock, lengths in metres on the left side. */
export function formatRefused(answer: TravelFold, side: "left" | "right"): z.output<typeof refusedPosition> {
  return answer.on === "rack"
    ? {
        refused: {
          code: "rack-beyond-fold",
          fold_travel_mm: null,
          fold_rack_mm: sideways(answer.foldAt, side) * 1000,
          joints: [...answer.joints],
        },
      }
    : { refused: { code: "beyond-fold", fold_travel_mm: answer.foldAt * 1000, joints: [...answer.joints] } };
}
