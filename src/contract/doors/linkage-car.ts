import { z } from "zod";
import { computeBar, computeSteeredAxle, placeCar, type WheelOnGround } from "#engines/linkage";
import type { Finding, Vector } from "#numeric";
import { degreesFromRadians, radiansFromDegrees } from "#quantity";
import type { Door } from "../door.ts";
import { checkCorner } from "./linkage-check.ts";
import { findDependence } from "./linkage-dependence.ts";
import { geometryFromWire, pointFromWire } from "./linkage-reading.ts";
import { cornerKeys, pointMm } from "./linkage-schema.ts";
import { isObject } from "./loose-corner.ts";

const { side: _left, ...leftKeys } = cornerKeys;
const axle = z.strictObject(leftKeys).meta({ description: "its left corner; the right one is the mirror image" });
const bar = z
  .strictObject({
    torsion_nm_per_deg: z.number().positive().max(1e5),
    lever_mm: z.number().min(1).max(2000).meta({ description: "from the bar's axis to its drop link" }),
    ratio: z.number().positive().max(3).meta({ description: "rise of the drop link per rise of the wheel" }),
  })
  .optional();

const input = z.strictObject({
  front: axle,
  rear: axle,
  front_bar: bar,
  rear_bar: bar,
  about_mm: pointMm.meta({ description: "point of the body that only rises when it turns" }),
  turn: z
    .strictObject({ pivots_mm: z.number().min(1).max(20_000), wheelbase_mm: z.number().min(1).max(20_000) })
    .optional()
    .meta({ description: "for the correct outer angle: width between the steering axes, wheelbase" }),
  motions: z
    .array(
      z.strictObject({
        heave_mm: z.number().default(0).meta({ description: "up" }),
        roll_deg: z.number().gt(-45).lt(45).default(0).meta({ description: "left side up" }),
        pitch_deg: z.number().gt(-45).lt(45).default(0).meta({ description: "nose down" }),
        rack_mm: z.number().default(0).meta({ description: "toward the left" }),
      }),
    )
    .min(1)
    .max(10_000),
});
type Input = z.output<typeof input>;

const wheel = z.strictObject({
  wheel_travel_mm: z.number(),
  camber_deg: z.number(),
  toe_deg: z.number(),
  contact_mm: z.tuple([z.number(), z.number(), z.number()]),
});
const barState = z.strictObject({
  twist_deg: z.number(),
  left_link_n: z.number(),
  left_wheel_n: z.number(),
});
const steer = z.strictObject({
  left_deg: z.number(),
  right_deg: z.number(),
  inner_deg: z.number(),
  outer_deg: z.number(),
  correct_outer_deg: z.number(),
  error_deg: z.number().meta({ description: "outer less correct: positive where the outer wheel turns too far" }),
});
const state = z.strictObject({
  front_left: wheel,
  front_right: wheel,
  rear_left: wheel,
  rear_right: wheel,
  front_bar: barState.optional(),
  rear_bar: barState.optional(),
  steering: steer.nullable().optional(),
});
const refused = z.strictObject({ refused: z.strictObject({ code: z.literal("beyond-fold") }) });
const output = z.strictObject({ states: z.array(z.union([state, refused])) });

const mm = (v: Vector): [number, number, number] => [v[0] * 1000, v[1] * 1000, v[2] * 1000];

function formatWheel(w: WheelOnGround): z.output<typeof wheel> {
  return {
    wheel_travel_mm: w.travel * 1000,
    camber_deg: degreesFromRadians(w.camber),
    toe_deg: degreesFromRadians(w.toe),
    contact_mm: mm(w.contact),
  };
}

function formatBar(
  given: Input["front_bar"],
  left: WheelOnGround,
  right: WheelOnGround,
): z.output<typeof barState> | null {
  if (!given) return null;
  const torsion = given.torsion_nm_per_deg / radiansFromDegrees(1);
  const done = computeBar({ torsion, lever: given.lever_mm / 1000, ratio: given.ratio }, left.travel, right.travel);
  return { twist_deg: degreesFromRadians(done.twist), left_link_n: done.leftLink, left_wheel_n: done.leftWheel };
}

/** Findings of one axle's corner under its own key. */
const checkAxle = (doc: unknown, key: string): Finding[] =>
  isObject(doc) ? checkCorner(doc).map((f) => ({ ...f, path: `${key}.${f.path}` })) : [];

export const linkageCar: Door<Input> = {
  id: "linkage.car",
  summary:
    "Four wheels on level ground for heave, roll, pitch and rack; twist of the bars; steering against one turn centre",
  input: input as unknown as z.ZodType<Input>,
  output,
  relation: "Each wheel's travel by Newton until its lowest point touches the ground; closed form of the turn centre",
  source: "own derivation; definitions in docs/method/linkage.md, section 15",
  accuracy: "1e-12 against one corner at a held contact height; steering 1e-12 against two circles (tests)",
  check(document) {
    return isObject(document) ? [...checkAxle(document.front, "front"), ...checkAxle(document.rear, "rear")] : [];
  },
  compute(wire) {
    const front = geometryFromWire({ ...wire.front, side: "left" });
    const rear = geometryFromWire({ ...wire.rear, side: "left" });
    const dependent = (
      [
        ["front", front],
        ["rear", rear],
      ] as const
    ).flatMap(([key, geometry]) => {
      const found = findDependence(geometry);
      return found ? [{ ...found, path: `${key}.${found.path}` }] : [];
    });
    if (dependent.length > 0) return { findings: dependent };
    const about = pointFromWire(wire.about_mm, "left");
    const turn = wire.turn && { pivots: wire.turn.pivots_mm / 1000, wheelbase: wire.turn.wheelbase_mm / 1000 };
    const states = wire.motions.map((m) => {
      const rack = m.rack_mm / 1000;
      const motion = {
        heave: m.heave_mm / 1000,
        roll: radiansFromDegrees(m.roll_deg),
        pitch: radiansFromDegrees(m.pitch_deg),
        about,
      };
      const car = placeCar(front, rear, motion, rack);
      if (!car) return { refused: { code: "beyond-fold" as const } };
      const steered = turn && computeSteeredAxle(front, rack, turn);
      const frontBar = formatBar(wire.front_bar, car.frontLeft, car.frontRight);
      const rearBar = formatBar(wire.rear_bar, car.rearLeft, car.rearRight);
      return {
        front_left: formatWheel(car.frontLeft),
        front_right: formatWheel(car.frontRight),
        rear_left: formatWheel(car.rearLeft),
        rear_right: formatWheel(car.rearRight),
        ...(frontBar ? { front_bar: frontBar } : {}),
        ...(rearBar ? { rear_bar: rearBar } : {}),
        ...(turn
          ? {
              steering: steered
                ? {
                    left_deg: degreesFromRadians(steered.left),
                    right_deg: degreesFromRadians(steered.right),
                    inner_deg: degreesFromRadians(steered.inner),
                    outer_deg: degreesFromRadians(steered.outer),
                    correct_outer_deg: degreesFromRadians(steered.correctOuter),
                    error_deg: degreesFromRadians(steered.error),
                  }
                : null,
            }
          : {}),
      };
    });
    return { output: { states } };
  },
};
