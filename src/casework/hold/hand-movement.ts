import { computeHandMovement, type ElasticCorner, type HandPush, type LoadState, TravelSweep } from "#engines/linkage";
import { add, cross, norm, scale, subtract, type Vector } from "#numeric";
import type { CornerAssembly, CornerJoint, Position } from "#vehicle";
import { engineName, jointOf, linksAt, modelOfAssembly, softFaults } from "../fault/corner-model.ts";
import type { HandWay, Held } from "../hold.ts";
import { loadedCornerOf, solveHeld } from "./held-corner.ts";

/** What a hand does at one joint of one corner: movements from side to side, metres. */
export interface Movement {
  readonly sound: number;
  readonly faulty: number;
  /** Of faulty, what play alone gives; 0 where it stays pressed shut. */
  readonly free: number;
  /** What presses the joint together, and what the hand brings to it, newtons. */
  readonly load: number;
  readonly brings: number;
}

/** A fault as one corner has it: a factor on the rates of the joint, and its play from end to end, metres. */
export interface HandFault {
  readonly factor: number;
  readonly play: number;
}

/** A hand reaches this far out: the tyre's edge. */
function pushOf(way: Exclude<HandWay, { kind: "bar" }>, corner: ReturnType<typeof loadedCornerOf>, state: LoadState) {
  const at = new TravelSweep(corner.geometry).solve({ travel: state.travel, rack: 0 });
  if ("foldAt" in at) return null;
  const { centre, heading, lateral } = at.attitude;
  const reach = corner.geometry.wheel.loadedRadius;
  const edges: Readonly<Record<"top" | "bottom" | "front" | "rear", Vector>> = {
    top: [0, 0, reach],
    bottom: [0, 0, -reach],
    front: scale(heading, reach),
    rear: scale(heading, -reach),
  };
  if (way.kind === "push") {
    const edge = edges[way.at];
    const force = scale(lateral, way.force);
    return { force, moment: cross(edge, force), readAt: add(centre, edge), readAlong: lateral };
  }
  const upright = way.at === "12-6";
  return {
    force: [0, 0, 0] as Vector,
    moment: upright ? scale(heading, -way.moment) : ([0, 0, way.moment] as Vector),
    readAt: add(centre, upright ? edges.top : edges.front),
    readAlong: lateral,
  };
}

/**
 * How far a hand moves what it reads at a joint of an assembled left-hand corner, sound and faulty, from side to side: at
 * the tyre's edge for a rock or a push, at the joint itself for a bar. Play shows only where the hand brings more to the
 * joint than presses it together. Null where the corner cannot be held so, or where nothing there gives.
 */
export function computeMovement(
  assembly: CornerAssembly,
  held: Held,
  position: Position,
  way: HandWay,
  fault: HandFault,
): Movement | null {
  const corner = loadedCornerOf(assembly);
  const state = solveHeld(corner, held);
  const joint = jointOf(assembly, position);
  if (!state || !joint) return null;
  const index = indexOf(assembly, state, position);
  const load = norm(state.joints[index]?.force ?? [0, 0, 0]);
  if (way.kind === "bar") return barMovement(joint, way.force, load, fault);
  // A wheel on the ground is not moved by hand.
  if (held.kind === "ride") return null;
  const push = pushOf(way, corner, state);
  if (!push) return null;
  const { geometry, elasticity } = modelOfAssembly(assembly);
  const sound: ElasticCorner = { geometry, elasticity, hold: "wheel-load", faults: [] };
  const whole = computeHandMovement(sound, state, push);
  const soft = computeHandMovement({ ...sound, faults: softFaults(assembly, position, fault.factor) }, state, push);
  if (whole === null || soft === null) return null;
  const brings = norm(state.answerTo(push.force, push.moment)[index]?.force ?? [0, 0, 0]);
  const free = brings > load ? fault.play * readPerPlay(push, state, geometry.wheel.centre, index) : 0;
  return { sound: 2 * whole, faulty: 2 * soft + free, free, load, brings };
}

/** By virtual work a play shows at the place read as what a unit push there brings to the joint. */
function readPerPlay({ readAt, readAlong }: HandPush, state: LoadState, design: Vector, index: number): number {
  const centre: Vector = add(design, [state.pose.t[0] ?? 0, state.pose.t[1] ?? 0, state.pose.t[2] ?? 0]);
  return norm(state.answerTo(readAlong, cross(subtract(readAt, centre), readAlong))[index]?.force ?? [0, 0, 0]);
}

/** A bar set at the joint moves its two parts across its axis against its own rubber; the rest of the corner stays. */
function barMovement(joint: CornerJoint, force: number, load: number, fault: HandFault): Movement {
  const radial = joint.radial ?? Number.POSITIVE_INFINITY;
  const free = force > load ? fault.play : 0;
  return {
    sound: (2 * force) / radial,
    faulty: (2 * force) / (radial * fault.factor) + free,
    free,
    load,
    brings: force,
  };
}

function indexOf(a: CornerAssembly, state: LoadState, position: Position): number {
  const names = linksAt(a, position).map(engineName);
  const mount = a.links.every(({ name }) => name !== position.joint?.link);
  return state.joints.findIndex(({ link, end }) => names.includes(link) && (mount || end === position.joint?.end));
}
