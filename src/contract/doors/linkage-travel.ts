import { z } from "zod";
import { type CornerGeometry, type TravelPosition, TravelSweep } from "#engines/linkage";
import type { Finding, Vector } from "#numeric";
import { degreesFromRadians } from "#quantity";
import type { Door } from "../door.ts";
import { checkCorner, checkSeat, entriesOf, isNumber, isObject } from "./linkage-check.ts";
import { findDependence } from "./linkage-dependence.ts";
import { geometryFromWire, pointToWire, sideways } from "./linkage-reading.ts";
import { axleName, carSchema, cornerKeys, seatSchema } from "./linkage-schema.ts";

const input = z.strictObject({
  ...cornerKeys,
  axle: axleName.optional(),
  spring: seatSchema.optional(),
  damper: seatSchema.optional(),
  car: carSchema.optional(),
  steps: z
    .array(z.strictObject({ wheel_travel_mm: z.number(), rack_mm: z.number().default(0) }))
    .min(1)
    .max(100_000),
});

const point = z.tuple([z.number(), z.number(), z.number()]);
const pair = z.tuple([z.number(), z.number()]).nullable();

const position = z.strictObject({
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
});

const refused = z.strictObject({
  refused: z.strictObject({
    code: z.enum(["beyond-fold", "rack-beyond-fold"]),
    fold_travel_mm: z.number().nullable(),
    fold_rack_mm: z.number().optional(),
  }),
});

const output = z.strictObject({
  positions: z.array(z.union([position, refused])),
  report: z.strictObject({
    end: z.enum(["converged", "binds"]),
    binds_at_mm: z.tuple([z.number().nullable(), z.number().nullable()]),
  }),
});

type Input = z.output<typeof input>;
type Position = z.output<typeof position>;

/** Looked at for binding either side of ride height, metres (the contract's 200 mm). */
const REACH = 0.2;

function checkRack(doc: Record<string, unknown>): Finding[] {
  if (!Array.isArray(doc.links) || entriesOf(doc.links).some(([, l]) => l.steered === true)) return [];
  return entriesOf(doc.steps).flatMap(([i, s]) =>
    isNumber(s.rack_mm) && s.rack_mm !== 0
      ? [
          {
            code: "nothing-steered",
            path: `steps[${i}].rack_mm`,
            got: String(s.rack_mm),
            needed: "0, as no link is steered",
            hint: 'Mark the tie rod with "steered": true.',
          },
        ]
      : [],
  );
}

/** `axle` may stand on top or in `car`; both must agree, and a car needs one. */
export function checkAxle(doc: Record<string, unknown>): Finding[] {
  const car = isObject(doc.car) ? doc.car : null;
  if (!car) return [];
  if (doc.axle === undefined && car.axle === undefined)
    return [
      {
        code: "missing-key",
        path: "car.axle",
        got: "nothing",
        needed: '"front" or "rear", here or on top',
        hint: "The sign of the anti figures hangs on it.",
      },
    ];
  if (doc.axle !== undefined && car.axle !== undefined && doc.axle !== car.axle)
    return [
      {
        code: "not-consistent",
        path: "car.axle",
        got: JSON.stringify(car.axle),
        needed: JSON.stringify(doc.axle),
        hint: "axle on top says otherwise: leave one out.",
      },
    ];
  return [];
}

function describe(p: TravelPosition, wire: Input): Position {
  const { side } = wire;
  const { attitude } = p;
  const steering = p.steering ? (p.steering.springHeld ?? p.steering.heightHeld) : null;
  const car = wire.car;
  const axle = wire.axle ?? car?.axle;
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

export const linkageTravel: Door<Input> = {
  id: "linkage.travel",
  summary:
    "Rigid linkage of one corner over wheel travel and rack: wheel angles, instant centres, steering axis, ratios",
  input: input as unknown as z.ZodType<Input>,
  output,
  relation:
    "Newton on the joint constraints, rates from the velocity screw of the same Jacobian (docs/method/linkage.md)",
  source: "own derivation; definitions in docs/method/linkage.md",
  accuracy: "1e-9 mm and deg against two independent programs, one in 50 digits (docs/verification.md)",
  check(document) {
    if (!isObject(document)) return [];
    return [
      ...checkCorner(document),
      ...checkAxle(document),
      ...checkSeat(document.spring, "spring", document),
      ...checkSeat(document.damper, "damper", document),
      ...checkRack(document),
    ];
  },
  compute(wire) {
    const geometry: CornerGeometry = geometryFromWire(wire, wire.spring, wire.damper);
    const dependent = findDependence(geometry);
    if (dependent) return { findings: [dependent] };
    const sweep = new TravelSweep(geometry);
    const turn = wire.side === "right" ? -1 : 1;
    let refusals = 0;
    const positions = wire.steps.map((step) => {
      const answer = sweep.solve({ travel: step.wheel_travel_mm / 1000, rack: (turn * step.rack_mm) / 1000 });
      if (!("foldAt" in answer)) return describe(answer, wire);
      refusals++;
      return answer.on === "rack"
        ? {
            refused: {
              code: "rack-beyond-fold" as const,
              fold_travel_mm: null,
              fold_rack_mm: turn * answer.foldAt * 1000,
            },
          }
        : { refused: { code: "beyond-fold" as const, fold_travel_mm: answer.foldAt * 1000 } };
    });
    const { low, high } = sweep.findBinding(REACH);
    const mm = (x: number | null): number | null => (x === null ? null : x * 1000);
    return {
      output: { positions, report: { end: refusals > 0 ? "binds" : "converged", binds_at_mm: [mm(low), mm(high)] } },
    };
  },
};
