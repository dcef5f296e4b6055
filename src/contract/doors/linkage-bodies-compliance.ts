import { z } from "zod";
import {
  buildLayoutLinkage,
  computeLayoutDerivatives,
  isLayoutStable,
  LayoutBalance,
  type LayoutDerivatives,
  type LayoutFault,
  type LayoutLinkage,
  type LayoutState,
  solveLayout,
} from "#engines/linkage";
import { computeScaledNormalQuantile, type Finding, subtract, type Vector } from "#numeric";
import { degreesFromRadians } from "#quantity";
import type { Door } from "../door.ts";
import { checkLayout, readLayout } from "../layout/index.ts";
import { checkBodiesRubber } from "./bodies-rubber-check.ts";
import {
  bodiesFault,
  bodiesKeys,
  doubtsKey,
  doubtsOf,
  readLayoutElasticity,
  readLayoutFaults,
} from "./bodies-schema.ts";
import { checkLoads, formatPerKn, loadFromWire, loadSchema, perKnSchema, unsolvedState } from "./compliance-load.ts";
import { findLayoutDependence } from "./linkage-bodies.ts";
import { pointToWire } from "./linkage-reading.ts";
import { isObject } from "./loose-corner.ts";

/** What the door is asked with; a file of a layout with its rubber is the same without a load. */
export const bodiesInput = z.strictObject({
  side: z.enum(["left", "right"]).default("left"),
  ...bodiesKeys,
  hold: z.enum(["wheel_load", "contact_height"]).default("wheel_load"),
  faults: z.array(bodiesFault).max(20).default([]),
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
const ends = z.tuple([z.number(), z.number()]);
const range = z.strictObject({ toe_deg: ends, camber_deg: ends });
const stateKeys = {
  ...angles,
  spin_deg: z.number(),
  wheel_centre_change_mm: point,
  contact_change_mm: point,
  spring_force_n: z.number(),
  wheel_load_n: z.number(),
  link_force_n: forces.meta({ description: "tension positive" }),
  joint_force_n: forces.meta({ description: "size of the force a joint passes" }),
  stable: z.boolean(),
};
const state = z.strictObject({
  ...stateKeys,
  others: z.array(z.strictObject(stateKeys)).meta({ description: "with play: every other balance of this load" }),
  band: z.strictObject(band).nullable().optional(),
  range: range.nullable().optional().meta({ description: "with a range among the faults: over its ends" }),
  less_sound: z
    .strictObject({ ...angles, ...band, toe_band_deg: ends, camber_band_deg: ends })
    .nullable()
    .optional()
    .meta({
      description:
        "with faults and sd_mm: this state less the sound one, the same disturbance in both; its band is 95 %, the ranges of the faults in it",
    }),
});

const output = z.strictObject({
  states: z.array(z.union([state, unsolvedState])),
  per_kn: perKnSchema,
  ...doubtsKey,
});

type Input = z.output<typeof bodiesInput>;

/** What a band of 95 % leaves out on either side. */
const TAIL = 0.025;

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
    stable: isLayoutStable(balance, s),
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
    const elasticity = readLayoutElasticity(wire, layout, side);
    const hold = wire.hold === "contact_height" ? ("contact-height" as const) : ("wheel-load" as const);
    const balanceOf = (faults: readonly LayoutFault[]) => new LayoutBalance(linkage, elasticity, hold, faults);
    const faults = readLayoutFaults(wire.faults);
    const balance = balanceOf(faults.middle);
    if (!balance.carries) return { findings: [cannotCarry] };
    const rangeEnds = faults.ends.map(balanceOf);
    const sound = faults.middle.length > 0 && wire.sd_mm ? balanceOf([]) : null;
    const turn = side === "right" ? -1 : 1;
    const states = wire.loads.map((l) => {
      const load = loadFromWire(l, turn);
      const answer = solveLayout(balance, load);
      if ("unsolved" in answer) return { refused: { code: "no-equilibrium" as const, end: answer.unsolved.end } };
      const { state: first, others } = answer;
      const by = wire.sd_mm ? computeLayoutDerivatives(balance, first) : null;
      const sd = by && deviationsOf(wire, by);
      const over = rangeEnds.map((end): Banded | null => bandedState(end, load, wire));
      return {
        ...formatState(linkage, balance, first, side),
        others: others.map((other) => formatState(linkage, balance, other, side)),
        ...(wire.sd_mm
          ? { band: by && sd && { toe_sd_deg: spread(by.toe, sd), camber_sd_deg: spread(by.camber, sd) } }
          : {}),
        ...(over.length > 0 ? { range: rangeOf(over) } : {}),
        ...(sound ? { less_sound: by && sd && lessSound(sound, load, [{ state: first, by }, ...over], sd) } : {}),
      };
    });
    const still = solveLayout(balance, loadFromWire(loadSchema.parse({}), 1));
    const rates = "unsolved" in still ? null : balance.loadRates(still.state);
    return { output: { states, per_kn: rates && formatPerKn(rates, side), ...doubtsOf(wire.layout) } };
  },
};

/** A balance, and its derivatives where bands are asked for and it has any. */
interface Banded {
  readonly state: LayoutState;
  readonly by: LayoutDerivatives | null;
}

/** The first balance of a load with its derivatives where bands are asked for; null where there is none. */
function bandedState(balance: LayoutBalance, load: LayoutState["load"], wire: Input): Banded | null {
  const answer = solveLayout(balance, load);
  if ("unsolved" in answer) return null;
  return { state: answer.state, by: wire.sd_mm ? computeLayoutDerivatives(balance, answer.state) : null };
}

const spanOf = (values: readonly number[]): [number, number] => [Math.min(...values), Math.max(...values)];

/** Where the angles lie over the ends of the faults' ranges; null where one of them finds no balance. */
function rangeOf(over: readonly (Banded | null)[]): z.output<typeof range> | null {
  const found = over.filter((end) => end !== null);
  if (found.length < over.length) return null;
  const spanned = (key: "toe" | "camber") => spanOf(found.map(({ state: s }) => degreesFromRadians(s.attitude[key])));
  return { toe_deg: spanned("toe"), camber_deg: spanned("camber") };
}

/** A state (first) and those at the ends of its range, less the sound one under the same load, the same disturbance in both. */
function lessSound(
  sound: LayoutBalance,
  load: LayoutState["load"],
  states: readonly (Banded | null)[],
  sd: readonly number[],
) {
  const answer = solveLayout(sound, load);
  const before = "unsolved" in answer ? null : computeLayoutDerivatives(sound, answer.state);
  const whole = states.flatMap((s) => (s?.by ? [{ state: s.state, by: s.by }] : []));
  if ("unsolved" in answer || !before || whole.length < states.length) return null;
  const changed = (key: "toe" | "camber") => {
    const changes = whole.map(({ state: s, by }) => ({
      mean: degreesFromRadians(s.attitude[key] - answer.state.attitude[key]),
      sd: spread(
        by[key].map((x, i) => x - (before[key][i] as number)),
        sd,
      ),
    }));
    const bounds = [TAIL, 1 - TAIL].flatMap((p) =>
      changes.map(({ mean, sd: own }) => computeScaledNormalQuantile({ mean, sd: own, logSd: 0 }, p)),
    );
    return { change: changes[0]?.mean ?? Number.NaN, sd: changes[0]?.sd ?? Number.NaN, band: spanOf(bounds) };
  };
  const [toe, camber] = [changed("toe"), changed("camber")];
  return {
    toe_deg: toe.change,
    camber_deg: camber.change,
    toe_sd_deg: toe.sd,
    camber_sd_deg: camber.sd,
    toe_band_deg: toe.band,
    camber_band_deg: camber.band,
  };
}

const cannotCarry: Finding = {
  code: "cannot-carry",
  path: "layout.spring",
  got: "a spring that does not carry the wheel",
  needed: "a spring whose length changes when the wheel rises",
  hint: "With these ends the joints alone would have to carry the wheel load, and they cannot: look at the spring's points.",
};
