import { z } from "zod";
import { chooseStates, type HandPush, type Opened, type Support } from "#engines/linkage";
import { add, scale, type Vector } from "#numeric";
import { sideways } from "./linkage-reading.ts";

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

/** Where a support stands on the part it is under, and how far it is raised. */
export const supportKeys = {
  share: z.number().gt(0).max(1).default(0.85).meta({ description: "of the way from inner to outer joint" }),
  raised_mm: z.number().min(0).max(500).default(25).meta({ description: "above hanging" }),
};

const three = z.tuple([z.number(), z.number(), z.number()]);
export const seenBy = z.enum(["hand", "bar", "nothing"]);
export const movementKeys = { sound_mm: z.number(), faulty_mm: z.number(), free_mm: z.number() };

/** The loads of a state, before those of its joints. */
export const heldKeys = {
  held: z.enum(["ride", "hanging", "under"]),
  under: z.string().nullable(),
  wheel_travel_mm: z.number(),
  spring_force_n: z.number(),
  stop_force_n: z.number(),
  support_force_n: z.number(),
  wheel_load_n: z.number(),
};

/** What presses a joint together and what opens its play; `force` says of what on what. */
export const jointKeys = (force: string) => ({
  force_n: three.meta({ description: force }),
  load_n: z.number(),
  hand_n: z.number(),
  rock: z.enum(["12-6", "3-9"]),
  play_seen_by: seenBy,
});

/** What stands in the place of a state the car cannot be held in. */
export const refusedHold = z.strictObject({
  refused: z.strictObject({ code: z.enum(["beyond-fold", "cannot-carry"]), fold_travel_mm: z.number().nullable() }),
});

interface AskedSupport {
  readonly share: number;
  readonly raised_mm: number;
}

/** Standing, hanging, and each support asked for, in this order. */
export const supportsOf = <A extends AskedSupport>(
  under: readonly A[],
  partOf: (asked: A) => string,
): readonly Support[] => [
  { kind: "ride" },
  { kind: "hanging" },
  ...under.map(
    (asked): Support => ({
      kind: "under",
      part: partOf(asked),
      share: asked.share,
      raised: asked.raised_mm / 1000,
    }),
  ),
];

interface Loads {
  readonly travel: number;
  readonly spring: number;
  readonly stop: number | null;
  readonly under: number;
  readonly wheelLoad: number;
}

export const formatHeld = (support: Support, at: Loads) => ({
  held: support.kind,
  under: support.kind === "under" ? support.part : null,
  wheel_travel_mm: at.travel * 1000,
  spring_force_n: at.spring,
  stop_force_n: at.stop ?? 0,
  support_force_n: at.under,
  wheel_load_n: at.wheelLoad,
});

/** A state that was refused, as it is answered. */
export const formatRefused = (
  found: { readonly foldAt: number } | { readonly unsolved: "cannot-carry" },
): z.output<typeof refusedHold> => ({
  refused:
    "foldAt" in found
      ? { code: "beyond-fold", fold_travel_mm: found.foldAt * 1000 }
      : { code: found.unsolved, fold_travel_mm: null },
});

type Side = "left" | "right";

/** A force between the axes of a door, whose right side is mirrored, and ours. */
export const wireForce = (v: Vector, side: Side): [number, number, number] => [v[0], sideways(v[1], side), v[2]];

export const formatJoint = (
  joint: Opened & { readonly force: Vector; readonly load: number },
  side: Side,
): z.output<z.ZodObject<ReturnType<typeof jointKeys>>> => ({
  force_n: wireForce(joint.force, side),
  load_n: joint.load,
  hand_n: joint.hand,
  rock: joint.rock,
  play_seen_by: joint.by,
});

/** The joints of one state, with the index of the state in the answer. */
export interface JudgedState<J> {
  readonly index: number;
  readonly joints: readonly J[];
}

/** The best state of every joint: hanging before supported before standing where they are alike, the least work first. */
export function bestStates<J extends Opened>(judged: readonly JudgedState<J>[]) {
  const order = [...judged.filter((j) => j.index > 0), ...judged.filter((j) => j.index === 0)];
  const best = chooseStates(order.map((j) => j.joints));
  return (order[0]?.joints ?? []).map((joint, i) => {
    const { state = null, seen = null } = best[i] ?? {};
    return {
      joint,
      state: state === null ? null : (order[state]?.index ?? null),
      play_seen_by: seen?.by ?? ("nothing" as const),
    };
  });
}

interface WheelAttitude {
  readonly centre: Vector;
  readonly heading: Vector;
  readonly lateral: Vector;
}

/** A rock of the wheel (N m), read at the tyre's edge where a hand is: at the top, or at the front. */
export function rockOf(
  { centre, heading, lateral }: WheelAttitude,
  reach: number,
  way: "12-6" | "3-9",
  rock: number,
): HandPush {
  const edge: Vector = way === "12-6" ? [0, 0, reach] : scale(heading, reach);
  const moment: Vector = way === "12-6" ? scale(heading, -rock) : [0, 0, rock];
  return { force: [0, 0, 0], moment, readAt: add(centre, edge), readAlong: lateral };
}
