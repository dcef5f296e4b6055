import { z } from "zod";
import {
  buildLayoutLinkage,
  computeLayoutDerivatives,
  type EndRate,
  LayoutBalance,
  type LayoutDerivatives,
  type LayoutFault,
  type LayoutLinkage,
  type LayoutRubber,
  type LayoutState,
} from "#engines/linkage";
import { type Finding, subtract, type Vector } from "#numeric";
import { degreesFromRadians, radiansFromDegrees } from "#quantity";
import { type BodyLayout, directionOfClocking } from "#vehicle";
import type { Door } from "../door.ts";
import { checkLayout, layoutSheet, readLayout } from "../layout/index.ts";
import { checkBodiesRubber } from "./bodies-rubber-check.ts";
import { checkLoads, formatPerKn, loadFromWire, loadSchema, perKnSchema, unsolvedState } from "./compliance-load.ts";
import { findLayoutDependence } from "./linkage-bodies.ts";
import { directionFromWire, pointToWire } from "./linkage-reading.ts";
import { axisSchema } from "./linkage-schema.ts";
import { isObject } from "./loose-corner.ts";

const positive = z.number().positive();

const rubber = z.strictObject({
  part: z.string().min(1).meta({ description: "name of a link (then with end) or of a joint" }),
  end: z.enum(["from", "to"]).optional().meta({ description: "which end of a link" }),
  radial_n_per_mm: positive.meta({ description: "across the axis; without an axis in every direction" }),
  axial_n_per_mm: positive.optional(),
  axis: axisSchema.optional().meta({ description: "of an end of a link; a joint has its own" }),
  voided_n_per_mm: positive
    .optional()
    .meta({ description: "through the voids; radial_n_per_mm then holds across both" }),
  clocking_deg: z.number().min(-360).max(360).optional().meta({ description: "as in linkage.compliance" }),
  rate_sd_share: z.number().min(0).max(10).default(0).meta({ description: "relative standard deviation, all rates" }),
});

/** What the door is asked with; a file of a layout with its rubber is the same without a load. */
export const bodiesInput = z.strictObject({
  side: z.enum(["left", "right"]).default("left"),
  layout: layoutSheet,
  spring_n_per_mm: positive,
  wheel_load_n: positive,
  rubber: z.array(rubber).max(60).default([]),
  members: z
    .array(z.strictObject({ link: z.string().min(1), n_per_mm: positive }))
    .max(40)
    .default([]),
  hold: z.enum(["wheel_load", "contact_height"]).default("wheel_load"),
  faults: z
    .array(z.strictObject({ part: z.string().min(1), end: z.enum(["from", "to"]).optional(), factor: positive }))
    .max(20)
    .default([]),
  sd_mm: z
    .strictObject({ x: z.number().min(0), y: z.number().min(0), z: z.number().min(0) })
    .optional()
    .meta({ description: "standard deviation of every point; bands are given with it" }),
  loads: z.array(loadSchema).max(2000).default([]),
});

const point = z.tuple([z.number(), z.number(), z.number()]);
const angles = { toe_deg: z.number(), camber_deg: z.number() };
const band = { toe_sd_deg: z.number(), camber_sd_deg: z.number() };
const forces = z.record(z.string(), z.number());
const state = z.strictObject({
  ...angles,
  spin_deg: z.number(),
  wheel_centre_change_mm: point,
  contact_change_mm: point,
  spring_force_n: z.number(),
  wheel_load_n: z.number(),
  link_force_n: forces.meta({ description: "tension positive" }),
  joint_force_n: forces.meta({ description: "size of the force a joint passes" }),
  band: z.strictObject(band).nullable().optional(),
  less_sound: z
    .strictObject({ ...angles, ...band })
    .nullable()
    .optional()
    .meta({ description: "with faults and sd_mm: this state less the sound one, the same disturbance in both" }),
});

const output = z.strictObject({
  states: z.array(z.union([state, unsolvedState])),
  per_kn: perKnSchema,
});

type Input = z.output<typeof bodiesInput>;
type WireRubber = z.output<typeof rubber>;

/** The axis of a joint at design, on the left side; null where it has none. */
function axisOfJoint(layout: BodyLayout, name: string): Vector | null {
  const joint = layout.joints.find((j) => j.name === name);
  if (joint?.kind !== "bush") return null;
  if (joint.axis.kind === "given") return joint.axis.vector;
  const [from, to] = [layout.points[joint.axis.from], layout.points[joint.axis.to]];
  return from && to ? subtract(to, from) : null;
}

/** One rubber of a layout, SI. */
export function readRubber(r: WireRubber, layout: BodyLayout, side: "left" | "right"): LayoutRubber {
  const own = r.axis && directionFromWire(r.axis, side);
  const axis = own ?? axisOfJoint(layout, r.part);
  const turn = side === "right" ? -1 : 1;
  const rate: EndRate = {
    radial: r.radial_n_per_mm * 1000,
    ...(r.axial_n_per_mm === undefined ? {} : { axial: r.axial_n_per_mm * 1000 }),
    ...(own ? { axis: own } : {}),
    ...(r.voided_n_per_mm !== undefined && r.clocking_deg !== undefined && axis
      ? {
          voided: {
            rate: r.voided_n_per_mm * 1000,
            through: directionOfClocking(axis, turn * radiansFromDegrees(r.clocking_deg)),
          },
        }
      : {}),
  };
  return { part: r.part, end: r.end ?? null, rate };
}

/** Standard deviations of every parameter, in the order of the derivatives; metres and shares. */
function deviationsOf(wire: Input, { parameters }: LayoutDerivatives): readonly number[] {
  const { x, y, z } = wire.sd_mm ?? { x: 0, y: 0, z: 0 };
  const rates = new Map(wire.rubber.map((r) => [r.end ? `${r.part}.${r.end}` : r.part, r.rate_sd_share]));
  return parameters.map((p) => (p.kind === "rate" ? (rates.get(p.name) ?? 0) : ([x, y, z][p.axis] as number) / 1000));
}

const spread = (derivatives: ArrayLike<number>, sd: readonly number[]): number =>
  degreesFromRadians(Math.hypot(...sd.map((s, i) => s * (derivatives[i] as number))));

/** Size of what the members of a part carry together; of one member with its sign. */
function forcesOf(balance: LayoutBalance, s: LayoutState, kind: "distance" | "offset"): Record<string, number> {
  const sums = new Map<string, number>();
  balance.terms.forEach(({ part, measure }, i) => {
    const force = s.forces[i] as number;
    if (measure.kind !== kind || part === "spring") return;
    sums.set(part, kind === "distance" ? force : Math.hypot(sums.get(part) ?? 0, force));
  });
  return Object.fromEntries(sums);
}

function formatState(linkage: LayoutLinkage, balance: LayoutBalance, s: LayoutState, side: "left" | "right") {
  const mm = (v: Vector): [number, number, number] => [...pointToWire(v, side)];
  const design = balance.designContact;
  const spring = balance.terms.findIndex(({ part }) => part === "spring");
  return {
    toe_deg: degreesFromRadians(s.attitude.toe),
    camber_deg: degreesFromRadians(s.attitude.camber),
    spin_deg: degreesFromRadians(s.attitude.spin),
    wheel_centre_change_mm: mm(subtract(s.attitude.centre, linkage.wheel.centre)),
    contact_change_mm: mm(subtract(s.attitude.contact, design)),
    spring_force_n: -(s.forces[spring] as number),
    wheel_load_n: s.wheelLoad,
    link_force_n: forcesOf(balance, s, "distance"),
    joint_force_n: forcesOf(balance, s, "offset"),
  };
}

export const linkageBodiesCompliance: Door<Input> = {
  id: "linkage.bodies-compliance",
  summary:
    "Any wheel suspension given as bodies and joints, with rubber in them: balance under tyre forces, rates and bands",
  input: bodiesInput as unknown as z.ZodType<Input>,
  output,
  relation:
    "Static balance of all bodies, elastic forces from one potential; derivatives by the transposed stiffness (docs/method/linkage-bodies.md)",
  source: "own derivation; definitions in docs/method/linkage-bodies.md",
  accuracy: "1e-12 rad against the balance of a single knuckle; derivatives 1e-7 against differences of whole balances",
  check(document) {
    if (!isObject(document)) return [];
    const side = document.side === "right" ? "right" : "left";
    return [...checkLayout(document.layout, "layout", side), ...checkBodiesRubber(document), ...checkLoads(document)];
  },
  compute(wire) {
    const { side } = wire;
    const layout = readLayout(wire.layout, side);
    const linkage = buildLayoutLinkage(layout);
    const dependent = findLayoutDependence({ linkage });
    if (dependent) return { findings: [dependent] };
    const elasticity = {
      springRate: wire.spring_n_per_mm * 1000,
      wheelLoad: wire.wheel_load_n,
      rubber: wire.rubber.map((r) => readRubber(r, layout, side)),
      members: wire.members.map((m) => ({ link: m.link, rate: m.n_per_mm * 1000 })),
    };
    const hold = wire.hold === "contact_height" ? ("contact-height" as const) : ("wheel-load" as const);
    const faults = wire.faults.map((f): LayoutFault => ({ part: f.part, end: f.end ?? null, factor: f.factor }));
    const balance = new LayoutBalance(linkage, elasticity, hold, faults);
    if (!balance.carries) return { findings: [cannotCarry] };
    const sound = faults.length > 0 && wire.sd_mm ? new LayoutBalance(linkage, elasticity, hold, []) : null;
    const turn = side === "right" ? -1 : 1;
    const states = wire.loads.map((l) => {
      const load = loadFromWire(l, turn);
      const answer = balance.solve(load);
      if ("unsolved" in answer) return { refused: { code: "no-equilibrium" as const, end: answer.unsolved.end } };
      const by = wire.sd_mm ? computeLayoutDerivatives(balance, answer) : null;
      const sd = by && deviationsOf(wire, by);
      return {
        ...formatState(linkage, balance, answer, side),
        ...(wire.sd_mm
          ? { band: by && sd && { toe_sd_deg: spread(by.toe, sd), camber_sd_deg: spread(by.camber, sd) } }
          : {}),
        ...(sound ? { less_sound: by && sd && lessSound(sound, load, answer, by, sd) } : {}),
      };
    });
    const still = balance.solve(loadFromWire(loadSchema.parse({}), 1));
    const rates = "unsolved" in still ? null : balance.loadRates(still);
    return { output: { states, per_kn: rates && formatPerKn(rates, side) } };
  },
};

/** A state less the sound one under the same load, the same disturbance in both; null where that finds no balance. */
function lessSound(
  sound: LayoutBalance,
  load: LayoutState["load"],
  faulty: LayoutState,
  by: LayoutDerivatives,
  sd: readonly number[],
) {
  const healthy = sound.solve(load);
  const before = "unsolved" in healthy ? null : computeLayoutDerivatives(sound, healthy);
  if ("unsolved" in healthy || !before) return null;
  const less = (a: Float64Array, b: Float64Array): Float64Array => a.map((x, i) => x - (b[i] as number));
  return {
    toe_deg: degreesFromRadians(faulty.attitude.toe - healthy.attitude.toe),
    camber_deg: degreesFromRadians(faulty.attitude.camber - healthy.attitude.camber),
    toe_sd_deg: spread(less(by.toe, before.toe), sd),
    camber_sd_deg: spread(less(by.camber, before.camber), sd),
  };
}

const cannotCarry: Finding = {
  code: "cannot-carry",
  path: "layout.spring",
  got: "a spring that does not carry the wheel",
  needed: "a spring whose length changes when the wheel rises",
  hint: "With these ends the joints alone would have to carry the wheel load, and they cannot: look at the spring's points.",
};
