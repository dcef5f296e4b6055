import type { LoadState, PlaySeen } from "#engines/linkage";
import { normalFrom, seededRandom } from "#numeric";
import type { CornerAssembly, Position } from "#vehicle";
import { type CornerModel, onAskedSide } from "../fault/corner-model.ts";
import type { Held, HeldJoint } from "../hold.ts";
import { disturbCorner } from "../sampling/disturb-corner.ts";
import { spreadOf } from "../sampling/spread.ts";
import { heldKey, jointAt, loadedCornerOf, seenIn, solveHeld, waysToHold } from "./held-corner.ts";

const SEED = 20_261_128;
/** Corners drawn for the bands. */
export const DRAWS = 60;
/** A verdict stands where so many of the drawn corners share it. */
const SURE = 0.975;

/** The same joint in the drawn corners, by state and position. */
export type DrawnJoints = ReadonlyMap<string, readonly PlaySeen[]>;

/** Loads of every joint in every state, each hard point and rate drawn from its own standard deviation. */
export function sampleHolds(assembly: CornerAssembly, positions: readonly Position[]): DrawnJoints {
  const draw = normalFrom(seededRandom(SEED));
  const drawn = new Map<string, PlaySeen[]>();
  for (let i = 0; i < DRAWS; i++) {
    const corner = loadedCornerOf(disturbCorner(assembly, draw));
    for (const held of waysToHold(corner)) {
      const state = solveHeld(corner, held);
      if (!state) continue;
      const seen = seenIn(state);
      for (const position of positions) {
        const joint = jointAt(assembly, seen, position);
        const key = drawnKey(held, position);
        if (joint) drawn.set(key, [...(drawn.get(key) ?? []), joint]);
      }
    }
  }
  return drawn;
}

const drawnKey = (held: Held, { id }: Position): string => `${heldKey(held)} ${id}`;

/** One joint of the corner as entered, with what the drawn corners say of it; null where the linkage has none there. */
export function judgeJoint(
  model: CornerModel,
  held: Held,
  state: LoadState,
  position: Position,
  drawn: DrawnJoints,
): HeldJoint | null {
  const { assembly } = model;
  const joint = jointAt(assembly, seenIn(state), position);
  if (!joint) return null;
  const all = drawn.get(drawnKey(held, position)) ?? [];
  const same = all.filter(({ by }) => by === joint.by).length;
  const band = all.length > 1 ? spreadOf(all.map(({ load }) => load)) : { low: joint.load, high: joint.load };
  return {
    position: position.id,
    load: joint.load,
    low: Math.min(band.low, joint.load),
    high: Math.max(band.high, joint.load),
    force: [...onAskedSide(model, joint.force)],
    hand: joint.hand,
    rock: joint.rock,
    by: all.length > 1 && same < SURE * all.length ? "too-close" : joint.by,
  };
}
