import {
  computeLoadState,
  computeSeatLength,
  judgePlay,
  type LoadedCorner,
  type LoadState,
  movingParts,
  type PlaySeen,
  type Support,
} from "#engines/linkage";
import { add, scale } from "#numeric";
import { type CornerAssembly, type Position, STANDARD_GRAVITY } from "#vehicle";
import { engineName, linksAt, modelOfAssembly } from "../fault/corner-model.ts";
import type { Held } from "../hold.ts";

/** A support stands this share of the way out along its part, and lifts so far from hanging (key hand-means in docs/sources.md). */
export const SUPPORT_SHARE = 0.85;
export const SUPPORT_RAISED = 0.025;
/** Both hands on the tyre, N m, and a bar at the joint, N (key hand-means in docs/sources.md). */
export const HAND_MEANS = { rock: 150, bar: 500 } as const;
const HEADING = [1, 0, 0] as const;

/** A corner with what stands on it; always the left one. */
export const loadedCornerOf = (a: CornerAssembly): LoadedCorner => ({
  geometry: modelOfAssembly(a).geometry,
  springRate: a.spring.rate,
  wheelLoad: a.wheelLoad,
  unsprungMass: a.unsprungMass,
  droop: a.droopStop,
  gravity: STANDARD_GRAVITY,
});

export const supportOf = (held: Held): Support =>
  held.kind === "under" ? { ...held, share: SUPPORT_SHARE, raised: SUPPORT_RAISED } : held;

/** Every way a corner is held: the least work first, standing last, as holds are chosen among. */
export const waysToHold = (corner: LoadedCorner): readonly Held[] => [
  { kind: "hanging" },
  ...movingParts(corner.geometry).map(({ name }): Held => ({ kind: "under", part: name })),
  { kind: "ride" },
];

/** Forces of a corner held in one way; null where its linkage does not reach that height or nothing carries it. */
export function solveHeld(corner: LoadedCorner, held: Held): LoadState | null {
  const found = computeLoadState(corner, supportOf(held));
  return "state" in found ? withSpringInMount(corner, found.state) : null;
}

/** The top mount of a strut passes on the push of the spring and the pull of the stop, beside the strut's side force. */
function withSpringInMount({ geometry }: LoadedCorner, state: LoadState): LoadState {
  const { spring } = geometry;
  if (!geometry.strut || !spring) return state;
  const push = scale(computeSeatLength(geometry, spring, state.pose).gradient, state.spring - (state.stop ?? 0));
  const joints = state.joints.map((joint) =>
    joint.link === "strut_top" ? { ...joint, force: add(joint.force, push) } : joint,
  );
  return { ...state, joints };
}

/** Where play is seen in a state, by the means of a workshop. */
export const seenIn = (state: LoadState): readonly PlaySeen[] => judgePlay(state, HEADING, HAND_MEANS);

/** The joint loads of the linkage with the position each stands for; mounts and joints without a position are left out. */
export function jointAt(a: CornerAssembly, joints: readonly PlaySeen[], position: Position): PlaySeen | null {
  const { joint } = position;
  if (!joint) return null;
  const mount = a.links.every(({ name }) => name !== joint.link);
  const names = linksAt(a, position).map(engineName);
  return joints.find(({ link, end }) => names.includes(link) && (mount || end === joint.end)) ?? null;
}

/** "ride", "hanging", "under/lower-arm" */
export const heldKey = (held: Held): string => (held.kind === "under" ? `under/${held.part}` : held.kind);
