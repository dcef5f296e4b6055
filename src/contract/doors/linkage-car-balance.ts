import { z } from "zod";
import {
  CarBalance,
  type CarBalanceState,
  computeBushGive,
  type LoadedAxle,
  type WheelPlace,
  wheelPlaces,
} from "#engines/linkage";
import type { Finding } from "#numeric";
import { degreesFromRadians, radiansFromDegrees } from "#quantity";
import { STANDARD_GRAVITY } from "#vehicle";
import type { Door } from "../door.ts";
import { checkCorner, checkElasticity, checkSeat } from "./linkage-check.ts";
import { findDependence } from "./linkage-dependence.ts";
import { elasticityFromWire, geometryFromWire } from "./linkage-reading.ts";
import { cornerKeys, memberSchema, rubberSchema, springSchema } from "./linkage-schema.ts";
import { isNumber, isObject } from "./loose-corner.ts";

const { side: _left, ...leftKeys } = cornerKeys;
const axle = z
  .strictObject({
    ...leftKeys,
    spring: springSchema,
    unsprung_kg: z.number().min(0).max(1e4).default(0).meta({ description: "moves with one wheel, at its centre" }),
    tyre_n_per_mm: z.number().positive().max(1e6).optional().meta({ description: "absent: a rigid disc" }),
    bar: z
      .strictObject({
        torsion_nm_per_deg: z.number().positive().max(1e5),
        lever_mm: z.number().min(1).max(2000),
        ratio: z.number().positive().max(3),
      })
      .optional()
      .meta({ description: "as in linkage.car" }),
    brake_share: z
      .number()
      .min(0)
      .max(1)
      .default(0.5)
      .meta({ description: "of the car's braking force; both sum to 1" }),
    drive_share: z.number().min(0).max(1).default(0.5).meta({ description: "of its driving force; both sum to 1" }),
    rubber: z.array(rubberSchema).max(60).default([]),
    members: z.array(memberSchema).max(20).default([]),
  })
  .meta({ description: "its left corner; the right one is the mirror image" });

const input = z.strictObject({
  front: axle,
  rear: axle,
  mass_kg: z.number().positive().max(1e5),
  front_weight_share: z.number().gt(0).lt(1),
  cg_height_mm: z.number().positive().max(5000).meta({ description: "of the whole car over the ground" }),
  lateral_m_per_s2: z
    .array(z.number().min(-100).max(100))
    .min(1)
    .max(1000)
    .meta({ description: "acceleration of a steady bend, positive in a bend to the left" }),
  forward_m_per_s2: z
    .number()
    .min(-100)
    .max(100)
    .default(0)
    .meta({ description: "in each of these bends; negative: the car brakes" }),
});
type Input = z.output<typeof input>;
type Axle = z.output<typeof axle>;

const wheel = z.strictObject({
  load_n: z.number(),
  lateral_n: z.number().meta({ description: "toward the left" }),
  braking_n: z.number().meta({ description: "rearward at the contact point" }),
  drive_n: z.number().meta({ description: "forward at the wheel centre" }),
  wheel_travel_mm: z.number(),
  spring_force_n: z.number(),
  camber_deg: z.number(),
  toe_deg: z.number(),
  bush_toe_deg: z
    .number()
    .nullable()
    .meta({ description: "by the joints' give under lateral_n, braking_n and drive_n; null: no balance" }),
  bush_camber_deg: z.number().nullable(),
});
const state = z.strictObject({
  heave_mm: z.number(),
  roll_deg: z.number().meta({ description: "left side up" }),
  pitch_deg: z.number(),
  front_moved_n: z.number().meta({ description: "from the left to the right wheel" }),
  rear_moved_n: z.number(),
  moved_forward_n: z.number().meta({ description: "from the rear to the front axle" }),
  front_left: wheel,
  front_right: wheel,
  rear_left: wheel,
  rear_right: wheel,
});
const refused = z.strictObject({
  refused: z.strictObject({
    code: z.enum(["wheel-lifts", "beyond-fold", "no-equilibrium"]),
    wheel: z.enum(["front_left", "front_right", "rear_left", "rear_right"]).nullable(),
  }),
});
const output = z.strictObject({ states: z.array(z.union([state, refused])) });

const wireNames = {
  frontLeft: "front_left",
  frontRight: "front_right",
  rearLeft: "rear_left",
  rearRight: "rear_right",
} as const;

function readAxle(wire: Axle, wheelLoad: number): LoadedAxle {
  return {
    geometry: geometryFromWire({ ...wire, side: "left" }, wire.spring),
    springRate: wire.spring.rate_n_per_mm * 1000,
    wheelLoad,
    unsprungMass: wire.unsprung_kg,
    tyreRate: wire.tyre_n_per_mm === undefined ? Number.POSITIVE_INFINITY : wire.tyre_n_per_mm * 1000,
    bar: wire.bar
      ? {
          torsion: wire.bar.torsion_nm_per_deg / radiansFromDegrees(1),
          lever: wire.bar.lever_mm / 1000,
          ratio: wire.bar.ratio,
        }
      : null,
    brakeShare: wire.brake_share,
    driveShare: wire.drive_share,
  };
}

function formatState(s: CarBalanceState, giveOf: (place: WheelPlace) => ReturnType<typeof computeBushGive>) {
  const format = (place: WheelPlace): z.output<typeof wheel> => {
    const w = s[place];
    const give = giveOf(place);
    return {
      load_n: w.load,
      lateral_n: w.lateral,
      braking_n: w.braking,
      drive_n: w.drive,
      wheel_travel_mm: w.travel * 1000,
      spring_force_n: w.spring,
      camber_deg: degreesFromRadians(w.camber),
      toe_deg: degreesFromRadians(w.toe),
      bush_toe_deg: give && degreesFromRadians(give.toe),
      bush_camber_deg: give && degreesFromRadians(give.camber),
    };
  };
  return {
    heave_mm: s.heave * 1000,
    roll_deg: degreesFromRadians(s.roll),
    pitch_deg: degreesFromRadians(s.pitch),
    front_moved_n: s.moved.front,
    rear_moved_n: s.moved.rear,
    moved_forward_n: s.movedForward,
    front_left: format("frontLeft"),
    front_right: format("frontRight"),
    rear_left: format("rearLeft"),
    rear_right: format("rearRight"),
  };
}

/** Findings of one axle under its own key. */
function checkAxle(doc: unknown, key: string): Finding[] {
  if (!isObject(doc)) return [];
  return [...checkCorner(doc), ...checkSeat(doc.spring, "spring", doc), ...checkElasticity(doc, "", doc)].map((f) => ({
    ...f,
    path: `${key}.${f.path}`,
  }));
}

/** A wheel that weighs more than it bears leaves nothing for its spring. */
function checkMasses(doc: Record<string, unknown>): Finding[] {
  const { mass_kg: mass, front_weight_share: share } = doc;
  if (!isNumber(mass) || !isNumber(share)) return [];
  return (["front", "rear"] as const).flatMap((key) => {
    const one = doc[key];
    const most = (mass * (key === "front" ? share : 1 - share)) / 2;
    return isObject(one) && isNumber(one.unsprung_kg) && !(one.unsprung_kg < most)
      ? [
          {
            code: "not-consistent",
            path: `${key}.unsprung_kg`,
            got: String(one.unsprung_kg),
            needed: `less than the ${most} kg this wheel bears`,
            hint: "It is contained in the mass of the car.",
          },
        ]
      : [];
  });
}

/** What an axle does not brake or drive the other does. */
function checkShares({ front, rear }: Record<string, unknown>): Finding[] {
  if (!isObject(front) || !isObject(rear)) return [];
  return ["brake_share", "drive_share"].flatMap((key) => {
    const [one, other] = [front[key] ?? 0.5, rear[key] ?? 0.5];
    return isNumber(one) && isNumber(other) && Math.abs(one + other - 1) > 1e-9
      ? [
          {
            code: "not-consistent",
            path: `rear.${key}`,
            got: `${one} at the front and ${other} at the rear`,
            needed: "shares that sum to 1",
            hint: `Where the front has ${one}, the rear has ${1 - one}.`,
          },
        ]
      : [];
  });
}

export const linkageCarBalance: Door<Input> = {
  id: "linkage.car-balance",
  summary:
    "A whole car in a steady bend, braked or driven: lean and nod, load of every wheel, what moves, give of the bushes",
  input: input as unknown as z.ZodType<Input>,
  output,
  relation:
    "Balance of body and four wheels with springs, bars and tyres by virtual work on the linkage itself; no roll-centre formula",
  source:
    "own derivation; docs/method/linkage.md, section 16; first order against the handbook's roll stiffness distribution and the nod of a braked car by hand (tests)",
  accuracy: "1e-8 of lean and load moved against the closed form of parallel arms; whole-car forces 1e-12 (tests)",
  check(document) {
    if (!isObject(document)) return [];
    return [
      ...checkAxle(document.front, "front"),
      ...checkAxle(document.rear, "rear"),
      ...checkMasses(document),
      ...checkShares(document),
    ];
  },
  compute(wire) {
    const weight = wire.mass_kg * STANDARD_GRAVITY;
    const loads = {
      front: (weight * wire.front_weight_share) / 2,
      rear: (weight * (1 - wire.front_weight_share)) / 2,
    };
    const axles = { front: readAxle(wire.front, loads.front), rear: readAxle(wire.rear, loads.rear) };
    const dependent = (["front", "rear"] as const).flatMap((key) => {
      const found = findDependence(axles[key].geometry);
      return found ? [{ ...found, path: `${key}.${found.path}` }] : [];
    });
    if (dependent.length > 0) return { findings: dependent };
    const balance = new CarBalance({ ...axles, massHeight: wire.cg_height_mm / 1000, gravity: STANDARD_GRAVITY });
    if (!balance.carries) return { findings: [cannotCarry] };
    const elasticity = (["front", "rear"] as const).map((key) => {
      const one = wire[key];
      const of = { ...one, rate_n_per_mm: one.spring.rate_n_per_mm, wheel_load_n: loads[key] };
      return elasticityFromWire(of, "left", one.strut);
    });
    const states = wire.lateral_m_per_s2.map((lateral) => {
      const answer = balance.solve({ lateral, forward: wire.forward_m_per_s2 });
      if ("lifts" in answer) return { refused: { code: "wheel-lifts" as const, wheel: wireNames[answer.lifts] } };
      if ("unsolved" in answer) return { refused: { code: answer.unsolved, wheel: null } };
      return formatState(answer.state, (place) => {
        const key = place.startsWith("front") ? "front" : "rear";
        const of = elasticity[key === "front" ? 0 : 1];
        const side = wheelPlaces.indexOf(place) % 2 === 0 ? "left" : "right";
        return of ? computeBushGive(axles[key].geometry, of, side, answer.state[place]) : null;
      });
    });
    return { output: { states } };
  },
};

const cannotCarry: Finding = {
  code: "cannot-carry",
  path: "front.spring",
  got: "a spring that does not carry the wheel, here or at the rear",
  needed: "a spring whose length changes when the wheel rises",
  hint: "Look at the points of both springs.",
};
