import { z } from "zod";
import { ComplianceSolver, type CornerGeometry, type ElasticState } from "#engines/linkage";
import { subtract, type Vector } from "#numeric";
import { degreesFromRadians } from "#quantity";
import type { Door } from "../door.ts";
import {
  checkLoads,
  formatPerKn,
  formatUnsolved,
  loadFromWire,
  loadSchema,
  perKnSchema,
  unsolvedState,
} from "./compliance-load.ts";
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
import { isObject } from "./loose-corner.ts";

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
  loads: z.array(loadSchema).max(20_000).default([]),
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
const output = z.strictObject({
  states: z.array(z.union([state, unsolvedState])),
  per_kn: perKnSchema,
});

type Input = z.output<typeof input>;

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
    const turn = wire.side === "right" ? -1 : 1;
    const writer = new Writer(geometry, solver.designContact, wire.side);
    const states = wire.loads.map((l) => {
      const answer = solver.solve(loadFromWire(l, turn));
      return "state" in answer
        ? { ...writer.state(answer.state), others: answer.others.map((o) => writer.state(o)) }
        : formatUnsolved(answer);
    });
    const rates = solver.solveLoadRates();
    return { output: { states, per_kn: rates && formatPerKn(rates, wire.side) } };
  },
};
