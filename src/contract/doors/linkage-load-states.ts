import { z } from "zod";
import {
  computeFreeMovement,
  computeHandMovement,
  computeLoadState,
  type ElasticCorner,
  type ElasticFault,
  judgePlay,
  type LoadedCorner,
  type LoadState,
  type PlaySeen,
  TravelSweep,
} from "#engines/linkage";
import type { Finding } from "#numeric";
import { STANDARD_GRAVITY } from "#vehicle";
import type { Door } from "../door.ts";
import {
  bestStates,
  formatHeld,
  formatJoint,
  formatRefused,
  handSchema,
  heldKeys,
  type JudgedState,
  jointKeys,
  movementKeys,
  refusedHold,
  rockOf,
  seenBy,
  supportKeys,
  supportsOf,
} from "./held-states.ts";
import { checkCorner, checkElasticity, checkSeat, linkNamesOf } from "./linkage-check.ts";
import { findDependence } from "./linkage-dependence.ts";
import { elasticityFromWire, faultsFromWire, geometryFromWire } from "./linkage-reading.ts";
import {
  cornerKeys,
  memberSchema,
  playSchema,
  rubberSchema,
  seatSchema,
  softSchema,
  springSchema,
} from "./linkage-schema.ts";
import { entriesOf, isObject } from "./loose-corner.ts";
import { checkNamed, namesOf } from "./named-entries.ts";

const input = z.strictObject({
  ...cornerKeys,
  spring: springSchema,
  damper: seatSchema.meta({ description: "the droop stop is in it" }),
  rubber: z.array(rubberSchema).max(60).default([]),
  members: z.array(memberSchema).max(20).default([]),
  wheel_load_n: z.number().positive().max(1e6).meta({ description: "at the patch at ride height, all included" }),
  unsprung_kg: z.number().min(0).max(1e4).meta({ description: "moves with the wheel, contained in the wheel load" }),
  droop_stop_mm: z.number().min(0).max(500).meta({ description: "from ride height down to the stop, positive" }),
  under: z
    .array(
      z.strictObject({
        link: z.string().min(1),
        ...supportKeys,
      }),
    )
    .max(20)
    .default([])
    .meta({ description: "supports to be tried, one state each" }),
  hand: handSchema,
  faults: z
    .array(z.discriminatedUnion("kind", [softSchema, playSchema]))
    .max(20)
    .default([]),
});
type Input = z.output<typeof input>;

const joint = z.strictObject({
  link: z.string(),
  end: z.enum(["inner", "outer"]),
  ...jointKeys("outer: of the part on the knuckle; inner: of the body on the part"),
});
const movement = z.strictObject({ ...movementKeys, hand_can_tell: z.boolean() }).nullable();
const state = z.strictObject({
  ...heldKeys,
  joints: z.array(joint),
  rock_12_6: movement,
  rock_3_9: movement,
});
const output = z.strictObject({
  states: z.array(z.union([state, refusedHold])),
  best: z.array(
    z.strictObject({
      link: z.string(),
      end: z.enum(["inner", "outer"]),
      state: z.number().nullable(),
      play_seen_by: seenBy,
    }),
  ),
});

function movementOf(
  wire: Input,
  sound: ElasticCorner,
  faults: readonly ElasticFault[],
  at: LoadState,
  way: "12-6" | "3-9",
): z.output<typeof movement> {
  const standing = new TravelSweep(sound.geometry).solve({ travel: at.travel, rack: 0 });
  if ("foldAt" in standing) return null;
  const push = rockOf(standing.attitude, sound.geometry.wheel.loadedRadius, way, wire.hand.rock_nm);
  const whole = computeHandMovement(sound, at, push);
  const faulty = computeHandMovement({ ...sound, faults: faults.filter((f) => f.kind === "soft") }, at, push);
  if (whole === null || faulty === null) return null;
  const free = faults.reduce(
    (sum, f) => sum + (f.kind === "play" ? (computeFreeMovement(sound, at, f.link, f.total, push) ?? 0) : 0),
    0,
  );
  // Rubber gives to both sides of rest, play is the whole way: both are told from side to side.
  const difference = 2000 * Math.abs(faulty - whole) + 1000 * free;
  return {
    sound_mm: 2000 * whole,
    faulty_mm: 2000 * faulty,
    free_mm: 1000 * free,
    hand_can_tell: difference >= wire.hand.told_from_mm,
  };
}

function checkUnder(doc: Record<string, unknown>): Finding[] {
  const links = linkNamesOf(doc);
  if (!links) return [];
  const asked = entriesOf(doc.under).flatMap(([i, u]) =>
    typeof u.link === "string" ? [{ name: u.link, path: `under[${i}].link` }] : [],
  );
  return checkNamed(asked, namesOf(doc.links, "links", "name"), "link");
}

export const linkageLoadStates: Door<Input> = {
  id: "linkage.load-states",
  summary:
    "Forces in every joint standing, hanging and supported; where play can be seen; what a hand on the wheel moves",
  input: input as unknown as z.ZodType<Input>,
  output,
  relation: "Static balance of joints, spring and stop or support; play is seen where a rock brings more than the load",
  source: "own derivation; definitions in docs/method/load-states.md",
  accuracy: "forces and moments of all parts add up to nothing within 1e-8 N and N m (tests)",
  check(document) {
    if (!isObject(document)) return [];
    return [
      ...checkCorner(document),
      ...checkSeat(document.spring, "spring", document),
      ...checkSeat(document.damper, "damper", document),
      ...checkElasticity(document, "", document),
      ...checkUnder(document),
    ];
  },
  compute(wire) {
    const { side } = wire;
    const geometry = geometryFromWire(wire, wire.spring, wire.damper);
    const dependent = findDependence(geometry);
    if (dependent) return { findings: [dependent] };
    const elasticity = elasticityFromWire({ ...wire, rate_n_per_mm: wire.spring.rate_n_per_mm }, side, wire.strut);
    const sound: ElasticCorner = { geometry, elasticity, hold: "wheel-load", faults: [] };
    const faults = faultsFromWire(wire.faults);
    const corner: LoadedCorner = {
      geometry,
      springRate: elasticity.springRate,
      wheelLoad: wire.wheel_load_n,
      unsprungMass: wire.unsprung_kg,
      droop: wire.droop_stop_mm / 1000,
      gravity: STANDARD_GRAVITY,
    };
    const judged: JudgedState<PlaySeen>[] = [];
    const means = { rock: wire.hand.rock_nm, bar: wire.hand.bar_n };
    const states = supportsOf(wire.under, ({ link }) => link).map((support, index) => {
      const found = computeLoadState(corner, support);
      if (!("state" in found)) return formatRefused(found);
      const at = found.state;
      const joints = judgePlay(at, [1, 0, 0], means);
      judged.push({ index, joints });
      const rocks = support.kind !== "ride";
      return {
        ...formatHeld(support, at),
        joints: joints.map((j) => ({ link: j.link, end: j.end, ...formatJoint(j, side) })),
        rock_12_6: rocks ? movementOf(wire, sound, faults, at, "12-6") : null,
        rock_3_9: rocks ? movementOf(wire, sound, faults, at, "3-9") : null,
      };
    });
    const best = bestStates(judged).map(({ joint: { link, end }, ...way }) => ({ link, end, ...way }));
    return { output: { states, best } };
  },
};
