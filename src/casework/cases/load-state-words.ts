import type { Axle, Position, PositionKind } from "#vehicle";
import type { LoadState } from "./look.ts";

type ByState = Readonly<Partial<Record<LoadState, string>>>;

/** What each state of load lets an eye or hand find at a kind of place (common practice, no source). */
const byKind: Readonly<Partial<Record<PositionKind, ByState>>> = {
  bush: {
    standing: "It carries the car: cracks open under load, free travel cannot be felt.",
    hanging: "A bar shows tears and free travel. It is twisted by the droop: an offset sleeve means nothing here.",
    supported: "Near ride height it lies as it works: offset, tears and free travel all show.",
  },
  "ball-joint": {
    standing: "The joint is loaded: only movement while somebody rocks the steering shows.",
    hanging:
      "A joint that only follows shows its play. One that carries the spring hides it: support its arm outboard.",
    supported: "With its arm supported outboard the joint that carries the spring is free and shows its play.",
  },
  bearing: {
    standing: "Nothing of it shows while the wheel carries the car.",
    hanging: "Turn the free wheel, then rock it at 12 and 6 and at 3 and 9.",
    supported: "The free wheel turns and rocks as when hanging.",
  },
  damper: {
    standing: "Bounce the corner and count the rebounds; a film can be seen only in part.",
    hanging: "Leaks and mounts show; its damping does not.",
    driving: "What it lets the body do is felt; nothing is seen.",
  },
  "strut-mount": {
    standing: "A hand on the spring while somebody steers feels the bearing.",
    hanging: "Cracks and a gap of the rubber show; the bearing is not loaded.",
  },
  "bar-link": {
    standing: "Loaded by the bar where the car leans: rock the car and listen.",
    hanging: "Both wheels must hang alike, else the bar holds its links tight.",
  },
};

const STRUT_BALL_JOINT =
  "With a strut the lower joint carries no spring: hanging, a lever between arm and knuckle shows its play.";

/**
 * What a state of load lets an eye or hand find at a place; null where every state is as good.
 * @param axle the axle the place lies on: with a strut the spring does not load the joint
 */
export function loadStateSays(position: Position, axle: Axle, state: LoadState): string | null {
  if (position.kind === "ball-joint" && axle.layout === "strut" && state === "hanging") return STRUT_BALL_JOINT;
  const kind = position.kind === "hydraulic-bush" ? "bush" : position.kind;
  return byKind[kind]?.[state] ?? null;
}
