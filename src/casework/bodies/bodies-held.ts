import {
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
  type Rock,
  type Support,
} from "#engines/linkage";
import { add, norm, scale, type Vector } from "#numeric";
import type { Metres } from "#quantity";
import { type BodyLayout, CAR_BODY, STANDARD_GRAVITY } from "#vehicle";
import type { BodiesFault, BodiesFile } from "../bodies.ts";
import { HAND_MEANS, SUPPORT_RAISED, SUPPORT_SHARE } from "../hold/held-corner.ts";
import { layoutFirmness } from "./bodies-fault.ts";

const HEADING: Vector = [1, 0, 0];

/** The moving body the spring stands on; null where that carries the wheel itself, or there is no spring. */
export function springBody({ spring, wheel }: BodyLayout): string | null {
  const on = [spring?.from.on, spring?.to.on].find((body) => body !== undefined && body !== CAR_BODY);
  return on === undefined || on === wheel.on ? null : on;
}

/** Every way a layout is held: the least work first, standing last, as ways are chosen among. */
export const waysOf = (layout: BodyLayout): readonly Support[] => [
  { kind: "hanging" },
  ...layout.bodies
    .filter((body) => body !== layout.wheel.on)
    .map((part): Support => ({ kind: "under", part, share: SUPPORT_SHARE, raised: SUPPORT_RAISED })),
  { kind: "ride" },
];

export const keyOfWay = (support: Support): string =>
  support.kind === "under" ? `under/${support.part}` : support.kind;

/** Forces of a layout held in one way; null where nothing carries it so, or the file does not say what moves. */
export function holdLayout(
  layout: BodyLayout,
  { springRate, wheelLoad }: LayoutElasticity,
  held: NonNullable<BodiesFile["held"]>,
  support: Support,
): LayoutLoadState | null {
  const loaded = { layout, springRate, wheelLoad, gravity: STANDARD_GRAVITY, ...held };
  const found = computeLayoutLoadState(loaded, support);
  return "state" in found ? found.state : null;
}

/** What presses each joint and each link together and what opens its play; of a link its first end, as both pass the same. */
export const seenOf = (state: LayoutLoadState): readonly (PartLoad & Opened)[] =>
  judgePlay(state, HEADING, HAND_MEANS).filter(({ end }) => end !== "to");

/** A rock of the wheel with both hands, read at the tyre's edge: at the top, or at the front. */
function rockOf({ attitude }: LayoutLoadState, radius: Metres, rock: Rock): HandPush {
  const { centre, heading, lateral } = attitude;
  const upright = rock === "12-6";
  return {
    force: [0, 0, 0],
    moment: upright ? scale(heading, -HAND_MEANS.rock) : [0, 0, HAND_MEANS.rock],
    readAt: add(centre, upright ? [0, 0, radius] : scale(heading, radius)),
    readAlong: lateral,
  };
}

/**
 * How far a rock moves the tyre's edge from side to side, sound and with faults, metres. Play shows only where the rock brings
 * more to the part than presses it together. Null where the joints leave a move free.
 */
export function rockLayout(
  layout: BodyLayout,
  elasticity: LayoutElasticity,
  faults: readonly LayoutFault[],
  state: LayoutLoadState,
  rock: Rock,
): { readonly sound: Metres; readonly faulty: Metres; readonly shut: boolean } | null {
  const push = rockOf(state, layout.wheel.loadedRadius, rock);
  const sound = computeLayoutHandMovement(layout, elasticity, [], state, push);
  const soft = computeLayoutHandMovement(layout, elasticity, faults, state, push);
  if (sound === null || soft === null) return null;
  const answers = state.answerTo(push.force, push.moment);
  const of = (list: readonly PartLoad[], part: string): number =>
    norm(list.find((joint) => joint.part === part)?.force ?? [0, 0, 0]);
  const plays = faults.flatMap((f) => (f.kind === "play" ? [f] : []));
  const open = plays.filter(({ part }) => of(answers, part) > of(state.joints, part));
  const free = open.reduce(
    (sum, { part, total }) => sum + (computeLayoutFreeMovement(state, part, total, push) ?? 0),
    0,
  );
  return { sound: 2 * sound, faulty: 2 * soft + free, shut: open.length < plays.length };
}

/** The fault of one drawn layout: a range at a share of its way. */
export function faultAt({ tornShare }: BodiesFile, fault: BodiesFault, share: number): readonly LayoutFault[] {
  if (fault.kind === "loose") return [{ kind: "play", part: fault.part, total: fault.play }];
  const range = fault.kind === "torn" ? tornShare : "hardness" in fault ? layoutFirmness(fault) : fault;
  if (range === null) return [];
  const { low, high } = range;
  return [{ kind: "soft", ...fault.place, factor: low * (high / low) ** share }];
}
