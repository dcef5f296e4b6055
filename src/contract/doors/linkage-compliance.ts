import { z } from "zod";
import {
  ComplianceSolver,
  type CornerGeometry,
  type CornerLoad,
  type ElasticState,
  type LoadRate,
} from "#engines/linkage";
import { type Finding, subtract, type Vector } from "#numeric";
import { degreesFromRadians } from "#quantity";
import type { Door } from "../door.ts";
import { checkCorner, checkElasticity, checkSeat } from "./linkage-check.ts";
import { findDependence } from "./linkage-dependence.ts";
import { elasticityFromWire, faultsFromWire, geometryFromWire, pointToWire, sideways } from "./linkage-reading.ts";
import {
  axleName,
  carSchema,
  cornerKeys,
  memberSchema,
  playSchema,
  rubberSchema,
  seatSchema,
  softSchema,
  springSchema,
} from "./linkage-schema.ts";
import { checkAxle } from "./linkage-travel.ts";
import { entriesOf, isNumber, isObject } from "./loose-corner.ts";

const load = z.strictObject({
  lateral_n: z.number().default(0).meta({ description: "toward +y (left), at the contact point" }),
  braking_n: z.number().default(0).meta({ description: "rearward at the contact point; negative pushes forward" }),
  drive_n: z.number().default(0).meta({ description: "forward at the wheel centre" }),
  aligning_nm: z.number().default(0).meta({ description: "about +z" }),
  contact_rise_mm: z.number().default(0).meta({ description: "only with hold contact_height" }),
});

const input = z.strictObject({
  ...cornerKeys,
  axle: axleName.optional(),
  car: carSchema.optional(),
  spring: springSchema,
  damper: seatSchema.optional(),
  rubber: z.array(rubberSchema).max(60).default([]),
  members: z.array(memberSchema).max(20).default([]),
  wheel_load_n: z.number().positive(),
  hold: z.enum(["wheel_load", "contact_height"]).default("wheel_load"),
  faults: z
    .array(z.discriminatedUnion("kind", [softSchema, playSchema]))
    .max(20)
    .default([]),
  loads: z.array(load).max(20_000).default([]),
});

const point = z.tuple([z.number(), z.number(), z.number()]);
const stateKeys = {
  toe_deg: z.number(),
  camber_deg: z.number(),
  spin_deg: z.number(),
  wheel_centre_change_mm: point,
  contact_change_mm: point,
  spring_force_n: z.number(),
  wheel_load_n: z.number(),
  link_force_n: z.record(z.string(), z.number()),
  mount_force_n: z.record(z.string(), point).optional(),
  stable: z.boolean(),
};
const state = z.strictObject({ ...stateKeys, others: z.array(z.strictObject(stateKeys)) });
const unsolved = z.strictObject({ refused: z.strictObject({ code: z.literal("no-equilibrium"), end: z.string() }) });
const rate = z.strictObject({
  toe_deg: z.number(),
  camber_deg: z.number(),
  caster_deg: z.number(),
  wheel_centre_mm: point,
  contact_mm: point,
});

const output = z.strictObject({
  states: z.array(z.union([state, unsolved])),
  per_kn: z.strictObject({ lateral: rate, braking: rate, drive: rate, aligning_per_100_nm: rate }).nullable(),
});

type Input = z.output<typeof input>;

function checkLoads(doc: Record<string, unknown>): Finding[] {
  if (doc.hold === "contact_height") return [];
  return entriesOf(doc.loads).flatMap(([i, l]) =>
    isNumber(l.contact_rise_mm) && l.contact_rise_mm !== 0
      ? [
          {
            code: "key-not-used-here",
            path: `loads[${i}].contact_rise_mm`,
            got: String(l.contact_rise_mm),
            needed: '"hold": "contact_height"',
            hint: "With the wheel load held the patch goes where the load lets it.",
          },
        ]
      : [],
  );
}

/** Load on a left corner: what points left on a right wheel points right on its mirror image. */
function loadFromWire(l: Input["loads"][number], turn: 1 | -1): CornerLoad {
  return {
    lateral: turn * l.lateral_n,
    braking: l.braking_n,
    drive: l.drive_n,
    aligning: turn * l.aligning_nm,
    contactRise: l.contact_rise_mm / 1000,
    rack: 0,
  };
}

class Writer {
  private readonly centre: Vector;
  private readonly contact: Vector;

  constructor(
    geometry: CornerGeometry,
    designContact: Vector,
    private readonly side: "left" | "right",
  ) {
    this.centre = geometry.wheel.centre;
    this.contact = designContact;
  }

  private mm(v: Vector): [number, number, number] {
    return [...pointToWire(v, this.side)];
  }

  state(s: ElasticState) {
    const { attitude } = s;
    const mounts = Object.entries(s.mountForces).map(
      ([name, f]) => [name, [f[0], sideways(f[1], this.side), f[2]]] as const,
    );
    return {
      toe_deg: degreesFromRadians(attitude.toe),
      camber_deg: degreesFromRadians(attitude.camber),
      spin_deg: degreesFromRadians(attitude.spin),
      wheel_centre_change_mm: this.mm(subtract(attitude.centre, this.centre)),
      contact_change_mm: this.mm(subtract(attitude.contact, this.contact)),
      spring_force_n: s.springForce,
      wheel_load_n: s.wheelLoad,
      link_force_n: s.linkForces,
      ...(mounts.length > 0 ? { mount_force_n: Object.fromEntries(mounts) } : {}),
      stable: s.stable,
    };
  }

  /** Rates per `amount` of a load; `turn` -1 where the load itself is mirrored. */
  rate(r: LoadRate, amount: number, turn: 1 | -1) {
    const k = amount * turn;
    return {
      toe_deg: degreesFromRadians(r.toe) * k,
      camber_deg: degreesFromRadians(r.camber) * k,
      caster_deg: degreesFromRadians(r.caster) * k,
      wheel_centre_mm: this.mm([r.centre[0] * k, r.centre[1] * k, r.centre[2] * k]),
      contact_mm: this.mm([r.contact[0] * k, r.contact[1] * k, r.contact[2] * k]),
    };
  }
}

export const linkageCompliance: Door<Input> = {
  id: "linkage.compliance",
  summary:
    "One corner with rubber in its joints: balance under tyre forces, sound or with torn or loose joints, and rates per load",
  input: input as unknown as z.ZodType<Input>,
  output,
  relation:
    "Static balance of the knuckle: all elastic forces are minus the gradient of one potential (docs/method/linkage.md)",
  source: "own derivation; definitions in docs/method/linkage.md",
  accuracy: "1e-9 deg, 1e-7 mm, 1e-5 N against an independent program in 40 digits (docs/verification.md)",
  check(document) {
    if (!isObject(document)) return [];
    return [
      ...checkCorner(document),
      ...checkAxle(document),
      ...checkSeat(document.spring, "spring", document),
      ...checkSeat(document.damper, "damper", document),
      ...checkElasticity(document, "", document),
      ...checkLoads(document),
    ];
  },
  compute(wire) {
    const geometry = geometryFromWire(wire, wire.spring, wire.damper);
    const dependent = findDependence(geometry);
    if (dependent) return { findings: [dependent] };
    const elasticity = elasticityFromWire({ ...wire, rate_n_per_mm: wire.spring.rate_n_per_mm }, wire.side, wire.strut);
    const hold = wire.hold === "contact_height" ? "contact-height" : "wheel-load";
    const solver = new ComplianceSolver({ geometry, elasticity, hold, faults: faultsFromWire(wire.faults) });
    if (!solver.carries)
      return {
        findings: [
          {
            code: "cannot-carry",
            path: "spring",
            got: "a spring that does not carry the wheel",
            needed: "a spring whose length changes when the wheel rises",
            hint: "With this seat the joints alone would have to carry the wheel load, and they cannot: look at the spring's points.",
          },
        ],
      };
    if (solver.tooManyPlays)
      return {
        findings: [
          {
            code: "out-of-range",
            path: "faults",
            got: `${solver.balance.playTerms.length} links with play`,
            needed: "at most 4 at once",
            hint: "Each link with play triples the states to be looked for.",
          },
        ],
      };
    const turn = wire.side === "right" ? -1 : 1;
    const writer = new Writer(geometry, solver.designContact, wire.side);
    const states = wire.loads.map((l) => {
      const answer = solver.solve(loadFromWire(l, turn));
      return "state" in answer
        ? { ...writer.state(answer.state), others: answer.others.map((o) => writer.state(o)) }
        : { refused: { code: "no-equilibrium" as const, end: answer.unsolved.end } };
    });
    const rates = solver.solveLoadRates();
    const perKn = rates && {
      lateral: writer.rate(rates.lateral, 1000, turn),
      braking: writer.rate(rates.braking, 1000, 1),
      drive: writer.rate(rates.drive, 1000, 1),
      aligning_per_100_nm: writer.rate(rates.aligning, 100, turn),
    };
    return { output: { states, per_kn: perKn } };
  },
};
