import { z } from "zod";
import {
  chooseHolds,
  computeFreeMovement,
  computeHandMovement,
  computeLoadState,
  type ElasticCorner,
  type ElasticFault,
  type HandPush,
  judgePlay,
  type LoadedCorner,
  type LoadState,
  type PlaySeen,
  type Support,
  TravelSweep,
} from "#engines/linkage";
import { add, type Finding, scale, type Vector } from "#numeric";
import { STANDARD_GRAVITY } from "#vehicle";
import type { Door } from "../door.ts";
import { checkCorner, checkElasticity, checkSeat, linkNamesOf } from "./linkage-check.ts";
import { findDependence } from "./linkage-dependence.ts";
import { elasticityFromWire, faultsFromWire, geometryFromWire, sideways } from "./linkage-reading.ts";
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

/** Both hands at the tyre, a bar at the joint, and what an eye tells at the tyre's edge: common practice, from memory. */
const USUAL_ROCK = 150;
const USUAL_BAR = 500;
const TOLD_FROM_MM = 0.5;

/** What a person brings to a joint, and from what change on an eye tells. */
export const handSchema = z
  .strictObject({
    rock_nm: z.number().positive().max(1e5).default(USUAL_ROCK),
    bar_n: z.number().positive().max(1e6).default(USUAL_BAR),
    told_from_mm: z.number().positive().max(100).default(TOLD_FROM_MM),
  })
  .prefault({});

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
        share: z.number().gt(0).max(1).default(0.85).meta({ description: "of the way from inner to outer joint" }),
        raised_mm: z.number().min(0).max(500).default(25).meta({ description: "above hanging" }),
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
type Side = Input["side"];

const three = z.tuple([z.number(), z.number(), z.number()]);
export const seenBy = z.enum(["hand", "bar", "nothing"]);
const joint = z.strictObject({
  link: z.string(),
  end: z.enum(["inner", "outer"]),
  force_n: three.meta({ description: "outer: of the part on the knuckle; inner: of the body on the part" }),
  load_n: z.number(),
  hand_n: z.number(),
  rock: z.enum(["12-6", "3-9"]),
  play_seen_by: seenBy,
});
const movement = z
  .strictObject({
    sound_mm: z.number(),
    faulty_mm: z.number(),
    free_mm: z.number(),
    hand_can_tell: z.boolean(),
  })
  .nullable();
const state = z.strictObject({
  held: z.enum(["ride", "hanging", "under"]),
  under: z.string().nullable(),
  wheel_travel_mm: z.number(),
  spring_force_n: z.number(),
  stop_force_n: z.number(),
  support_force_n: z.number(),
  wheel_load_n: z.number(),
  joints: z.array(joint),
  rock_12_6: movement,
  rock_3_9: movement,
});
/** What stands in the place of a state the car cannot be held in. */
export const refusedHold = z.strictObject({
  refused: z.strictObject({ code: z.enum(["beyond-fold", "cannot-carry"]), fold_travel_mm: z.number().nullable() }),
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

const wireForce = (v: Vector, side: Side): [number, number, number] => [v[0], sideways(v[1], side), v[2]];

/** A rock of the wheel, read at the tyre's edge where a hand is: at the top, or at the front. */
function rockOf(
  state: LoadState,
  geometry: LoadedCorner["geometry"],
  way: "12-6" | "3-9",
  rock: number,
): HandPush | null {
  const at = new TravelSweep(geometry).solve({ travel: state.travel, rack: 0 });
  if ("foldAt" in at) return null;
  const { centre, heading, lateral } = at.attitude;
  const reach = geometry.wheel.loadedRadius;
  const edge: Vector = way === "12-6" ? [0, 0, reach] : scale(heading, reach);
  const moment: Vector = way === "12-6" ? scale(heading, -rock) : [0, 0, rock];
  return { force: [0, 0, 0], moment, readAt: add(centre, edge), readAlong: lateral };
}

function movementOf(
  wire: Input,
  sound: ElasticCorner,
  faults: readonly ElasticFault[],
  at: LoadState,
  way: "12-6" | "3-9",
): z.output<typeof movement> {
  const push = rockOf(at, sound.geometry, way, wire.hand.rock_nm);
  if (!push) return null;
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
    const supports: Support[] = [
      { kind: "ride" },
      { kind: "hanging" },
      ...wire.under.map((u): Support => ({ kind: "under", part: u.link, share: u.share, raised: u.raised_mm / 1000 })),
    ];
    const judged: { readonly index: number; readonly joints: readonly PlaySeen[] }[] = [];
    const means = { rock: wire.hand.rock_nm, bar: wire.hand.bar_n };
    const states = supports.map((support, index) => {
      const found = computeLoadState(corner, support);
      if ("foldAt" in found) return { refused: { code: "beyond-fold" as const, fold_travel_mm: found.foldAt * 1000 } };
      if ("unsolved" in found) return { refused: { code: "cannot-carry" as const, fold_travel_mm: null } };
      const at = found.state;
      const joints = judgePlay(at, [1, 0, 0], means);
      judged.push({ index, joints });
      const rocks = support.kind !== "ride";
      return {
        held: support.kind,
        under: support.kind === "under" ? support.part : null,
        wheel_travel_mm: at.travel * 1000,
        spring_force_n: at.spring,
        stop_force_n: at.stop ?? 0,
        support_force_n: at.under,
        wheel_load_n: at.wheelLoad,
        joints: joints.map((j) => ({
          link: j.link,
          end: j.end,
          force_n: wireForce(j.force, side),
          load_n: j.load,
          hand_n: j.hand,
          rock: j.rock,
          play_seen_by: j.by,
        })),
        rock_12_6: rocks ? movementOf(wire, sound, faults, at, "12-6") : null,
        rock_3_9: rocks ? movementOf(wire, sound, faults, at, "3-9") : null,
      };
    });
    // Hanging before supported before standing: the least work first.
    const order = [...judged.filter((j) => j.index > 0), ...judged.filter((j) => j.index === 0)];
    const best = chooseHolds(order.map((j) => j.joints)).map((hold) => ({
      link: hold.link,
      end: hold.end,
      state: hold.state === null ? null : (order[hold.state]?.index ?? null),
      play_seen_by: hold.seen?.by ?? ("nothing" as const),
    }));
    return { output: { states, best } };
  },
};
