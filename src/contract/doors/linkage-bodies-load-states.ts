import { z } from "zod";
import {
  buildLayoutLinkage,
  chooseStates,
  computeLayoutFreeMovement,
  computeLayoutHandMovement,
  computeLayoutLoadState,
  type HandPush,
  judgePlay,
  type LayoutElasticity,
  type LayoutFault,
  type LayoutLoadState,
  type Opened,
  type PartLoad,
  type Support,
} from "#engines/linkage";
import { add, cross, type Finding, norm, scale, subtract, type Vector } from "#numeric";
import { type BodyLayout, STANDARD_GRAVITY } from "#vehicle";
import type { Door } from "../door.ts";
import { checkLayout, readLayout } from "../layout/index.ts";
import { checkBodiesRubber } from "./bodies-rubber-check.ts";
import { bodiesFault, bodiesKeys, type RangedFaults, readLayoutElasticity, readLayoutFaults } from "./bodies-schema.ts";
import { findLayoutDependence } from "./linkage-bodies.ts";
import { handSchema, refusedHold, seenBy } from "./linkage-load-states.ts";
import { pointFromWire, sideways } from "./linkage-reading.ts";
import { pointMm } from "./linkage-schema.ts";
import { entriesOf, isObject } from "./loose-corner.ts";
import { checkNamed, namesOf } from "./named-entries.ts";

const three = z.tuple([z.number(), z.number(), z.number()]);

const input = z.strictObject({
  side: z.enum(["left", "right"]).default("left"),
  ...bodiesKeys,
  unsprung_kg: z.number().min(0).max(1e4).meta({ description: "moves with the wheel, contained in the wheel load" }),
  droop_stop_mm: z.number().min(0).max(500).meta({ description: "from ride height down to the stop in the damper" }),
  under: z
    .array(
      z.strictObject({
        part: z.string().min(1).meta({ description: "name of a moving body or of a link" }),
        share: z.number().gt(0).max(1).default(0.85).meta({ description: "of the way from inner to outer joint" }),
        raised_mm: z.number().min(0).max(500).default(25).meta({ description: "above hanging" }),
      }),
    )
    .max(20)
    .default([])
    .meta({ description: "supports to be tried, one state each" }),
  hand: handSchema,
  pushes: z
    .array(z.strictObject({ at_mm: pointMm, force_n: three }))
    .max(20)
    .default([])
    .meta({ description: "forces on the wheel at places of it at ride height; read there along the force" }),
  faults: z.array(bodiesFault).max(20).default([]),
});
type Input = z.output<typeof input>;
type Side = Input["side"];

const movement = z
  .strictObject({
    sound_mm: z.number(),
    faulty_mm: z.number(),
    free_mm: z.number(),
    moved_range_mm: z
      .tuple([z.number(), z.number()])
      .optional()
      .meta({ description: "with a range among the faults: faulty and free together over its ends" }),
    hand_can_tell: z.boolean(),
  })
  .nullable()
  .meta({ description: "from side to side" });
const partKeys = { part: z.string(), end: z.enum(["from", "to"]).nullable() };
const state = z.strictObject({
  held: z.enum(["ride", "hanging", "under"]),
  under: z.string().nullable(),
  wheel_travel_mm: z.number(),
  spring_force_n: z.number(),
  stop_force_n: z.number(),
  support_force_n: z.number(),
  wheel_load_n: z.number(),
  joints: z.array(
    z.strictObject({
      ...partKeys,
      force_n: three.meta({ description: "of the first body on the second; of a link on what carries its end" }),
      load_n: z.number(),
      hand_n: z.number(),
      rock: z.enum(["12-6", "3-9"]),
      play_seen_by: seenBy,
    }),
  ),
  rock_12_6: movement,
  rock_3_9: movement,
  pushes: z.array(movement),
});
const output = z.strictObject({
  states: z.array(z.union([state, refusedHold])),
  best: z.array(z.strictObject({ ...partKeys, state: z.number().nullable(), play_seen_by: seenBy })),
});

const wireForce = (v: Vector, side: Side): [number, number, number] => [v[0], sideways(v[1], side), v[2]];

/** A rock of the wheel, read at the tyre's edge where a hand is: at the top, or at the front. */
function rockOf({ attitude }: LayoutLoadState, layout: BodyLayout, way: "12-6" | "3-9", rock: number): HandPush {
  const { centre, heading, lateral } = attitude;
  const reach = layout.wheel.loadedRadius;
  const edge: Vector = way === "12-6" ? [0, 0, reach] : scale(heading, reach);
  const moment: Vector = way === "12-6" ? scale(heading, -rock) : [0, 0, rock];
  return { force: [0, 0, 0], moment, readAt: add(centre, edge), readAlong: lateral };
}

/** A force at a place of the wheel, told at ride height; the wheel moved there. Null for no force. */
function pushAt(
  { attitude }: LayoutLoadState,
  layout: BodyLayout,
  push: Input["pushes"][number],
  side: Side,
): HandPush | null {
  const arm = subtract(pointFromWire(push.at_mm, side), layout.wheel.centre);
  const force: Vector = wireForce(push.force_n, side);
  const size = norm(force);
  if (size === 0) return null;
  const readAt = add(attitude.centre, arm);
  return { force, moment: cross(arm, force), readAt, readAlong: scale(force, 1 / size) };
}

interface Moved {
  readonly layout: BodyLayout;
  readonly elasticity: LayoutElasticity;
  readonly faults: RangedFaults;
  readonly toldFrom: number;
}

function movementOf(
  { layout, elasticity, faults, toldFrom }: Moved,
  at: LayoutLoadState,
  push: HandPush | null,
): z.output<typeof movement> {
  if (!push) return null;
  const whole = computeLayoutHandMovement(layout, elasticity, [], at, push);
  const freeOf = (list: readonly LayoutFault[]): number =>
    list.reduce(
      (sum, f) => sum + (f.kind === "play" ? (computeLayoutFreeMovement(at, f.part, f.total, push) ?? 0) : 0),
      0,
    );
  // Rubber gives to both sides of rest, play is the whole way: both are told from side to side.
  const movedMm = (list: readonly LayoutFault[]) => {
    const moved = computeLayoutHandMovement(layout, elasticity, list, at, push);
    return moved === null ? null : { faulty: 2000 * moved, free: 1000 * freeOf(list) };
  };
  const faulty = movedMm(faults.middle);
  if (whole === null || faulty === null) return null;
  const ends = faults.ends.flatMap((end) => movedMm(end) ?? []).map((end) => end.faulty + end.free);
  return {
    sound_mm: 2000 * whole,
    faulty_mm: faulty.faulty,
    free_mm: faulty.free,
    ...(ends.length > 0 ? { moved_range_mm: [Math.min(...ends), Math.max(...ends)] } : {}),
    hand_can_tell: Math.abs(faulty.faulty - 2000 * whole) + faulty.free >= toldFrom,
  };
}

function checkHolds(doc: Record<string, unknown>): Finding[] {
  const layout = isObject(doc.layout) ? doc.layout : {};
  const bodies = (Array.isArray(layout.bodies) ? layout.bodies : []).flatMap((name, i) =>
    typeof name === "string" ? [{ name, path: `layout.bodies[${i}]` }] : [],
  );
  const asked = entriesOf(doc.under).flatMap(([i, u]) =>
    typeof u.part === "string" ? [{ name: u.part, path: `under[${i}].part` }] : [],
  );
  return [
    ...(isObject(doc.layout) && layout.damper === undefined
      ? [
          {
            code: "missing-key",
            path: "layout.damper",
            got: "nothing",
            needed: "the damper: the stop that holds the hanging wheel is in it",
            hint: "Give the two ends of the damper, or of the strap that stops the droop.",
          },
        ]
      : []),
    ...checkNamed(asked, [...bodies, ...namesOf(layout.links, "layout.links", "name")], "moving body or link"),
  ];
}

export const linkageBodiesLoadStates: Door<Input> = {
  id: "linkage.bodies-load-states",
  summary:
    "Any wheel suspension given as bodies and joints, standing, hanging and supported: forces in every joint, where play can be seen, what a hand moves",
  input: input as unknown as z.ZodType<Input>,
  output,
  relation:
    "Static balance of all bodies, spring and stop or support; play is seen where a rock brings more than the load",
  source: "own derivation; definitions in docs/method/load-states.md",
  accuracy: "1e-6 N against linkage.load-states where the layout is a corner (tests)",
  check(document) {
    if (!isObject(document)) return [];
    const side = document.side === "right" ? "right" : "left";
    return [...checkLayout(document.layout, "layout", side), ...checkBodiesRubber(document), ...checkHolds(document)];
  },
  compute(wire) {
    const { side } = wire;
    const layout = readLayout(wire.layout, side);
    const dependent = findLayoutDependence({ linkage: buildLayoutLinkage(layout) });
    if (dependent) return { findings: [dependent] };
    const elasticity = readLayoutElasticity(wire, layout, side);
    const moved: Moved = {
      layout,
      elasticity,
      faults: readLayoutFaults(wire.faults),
      toldFrom: wire.hand.told_from_mm,
    };
    const loaded = {
      layout,
      springRate: elasticity.springRate,
      wheelLoad: wire.wheel_load_n,
      unsprungMass: wire.unsprung_kg,
      droop: wire.droop_stop_mm / 1000,
      gravity: STANDARD_GRAVITY,
    };
    const supports: Support[] = [
      { kind: "ride" },
      { kind: "hanging" },
      ...wire.under.map((u): Support => ({ kind: "under", part: u.part, share: u.share, raised: u.raised_mm / 1000 })),
    ];
    const judged: { readonly index: number; readonly joints: readonly (PartLoad & Opened)[] }[] = [];
    const means = { rock: wire.hand.rock_nm, bar: wire.hand.bar_n };
    const states = supports.map((support, index) => {
      const found = computeLayoutLoadState(loaded, support);
      if ("foldAt" in found) return { refused: { code: "beyond-fold" as const, fold_travel_mm: found.foldAt * 1000 } };
      if ("unsolved" in found) return { refused: { code: "cannot-carry" as const, fold_travel_mm: null } };
      const at = found.state;
      const joints = judgePlay(at, [1, 0, 0], means);
      judged.push({ index, joints });
      const rocked = (way: "12-6" | "3-9") =>
        support.kind === "ride" ? null : movementOf(moved, at, rockOf(at, layout, way, wire.hand.rock_nm));
      return {
        held: support.kind,
        under: support.kind === "under" ? support.part : null,
        wheel_travel_mm: at.travel * 1000,
        spring_force_n: at.spring,
        stop_force_n: at.stop ?? 0,
        support_force_n: at.under,
        wheel_load_n: at.wheelLoad,
        joints: joints.map(({ part, end, force, load, hand, rock, by }) => ({
          part,
          end,
          force_n: wireForce(force, side),
          load_n: load,
          hand_n: hand,
          rock,
          play_seen_by: by,
        })),
        rock_12_6: rocked("12-6"),
        rock_3_9: rocked("3-9"),
        pushes: wire.pushes.map((push) => movementOf(moved, at, pushAt(at, layout, push, side))),
      };
    });
    // Hanging before supported before standing: the least work first.
    const order = [...judged.filter((j) => j.index > 0), ...judged.filter((j) => j.index === 0)];
    const best = chooseStates(order.map((j) => j.joints)).map(({ state: found, seen }, i) => ({
      part: order[0]?.joints[i]?.part ?? "",
      end: order[0]?.joints[i]?.end ?? null,
      state: found === null ? null : (order[found]?.index ?? null),
      play_seen_by: seen?.by ?? ("nothing" as const),
    }));
    return { output: { states, best } };
  },
};
