import { z } from "zod";
import {
  buildLayoutLinkage,
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
} from "#engines/linkage";
import { add, cross, type Finding, norm, scale, subtract, type Vector } from "#numeric";
import { type BodyLayout, STANDARD_GRAVITY } from "#vehicle";
import type { Door } from "../door.ts";
import { checkLayout, readLayout } from "../layout/index.ts";
import { checkBodiesRubber } from "./bodies-rubber-check.ts";
import {
  bodiesFault,
  bodiesKeys,
  doubtsKey,
  doubtsOf,
  type RangedFaults,
  readLayoutElasticity,
  readLayoutFaults,
} from "./bodies-schema.ts";
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
  wireForce,
} from "./held-states.ts";
import { findLayoutDependence } from "./linkage-bodies.ts";
import { pointFromWire } from "./linkage-reading.ts";
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
        ...supportKeys,
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
    ...movementKeys,
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
  ...heldKeys,
  joints: z.array(
    z.strictObject({
      ...partKeys,
      ...jointKeys("of the first body on the second; of a link on what carries its end"),
    }),
  ),
  rock_12_6: movement,
  rock_3_9: movement,
  pushes: z.array(movement),
});
const output = z.strictObject({
  states: z.array(z.union([state, refusedHold])),
  best: z.array(z.strictObject({ ...partKeys, state: z.number().nullable(), play_seen_by: seenBy })),
  ...doubtsKey,
});

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
    const judged: JudgedState<PartLoad & Opened>[] = [];
    const means = { rock: wire.hand.rock_nm, bar: wire.hand.bar_n };
    const states = supportsOf(wire.under, ({ part }) => part).map((support, index) => {
      const found = computeLayoutLoadState(loaded, support);
      if (!("state" in found)) return formatRefused(found);
      const at = found.state;
      const joints = judgePlay(at, [1, 0, 0], means);
      judged.push({ index, joints });
      const rocked = (way: "12-6" | "3-9") =>
        support.kind === "ride"
          ? null
          : movementOf(moved, at, rockOf(at.attitude, layout.wheel.loadedRadius, way, wire.hand.rock_nm));
      return {
        ...formatHeld(support, at),
        joints: joints.map((joint) => ({ part: joint.part, end: joint.end, ...formatJoint(joint, side) })),
        rock_12_6: rocked("12-6"),
        rock_3_9: rocked("3-9"),
        pushes: wire.pushes.map((push) => movementOf(moved, at, pushAt(at, layout, push, side))),
      };
    });
    const best = bestStates(judged).map(({ joint: { part, end }, ...way }) => ({ part, end, ...way }));
    return { output: { states, best, ...doubtsOf(wire.layout) } };
  },
};
