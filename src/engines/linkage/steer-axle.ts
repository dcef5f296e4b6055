import type { Metres, Radians } from "#quantity";
import type { CornerGeometry } from "./geometry.ts";
import { TravelSweep } from "./solve-travel.ts";
import { computeCorrectOuterAngle, type TurnGeometry } from "./steering-geometry.ts";

/** Both wheels of a steered axle at one rack position; angles from straight ahead, positive to the left. */
export interface SteeredAxle {
  readonly left: Radians;
  readonly right: Radians;
  /** The larger turn and the other, as magnitudes; the inner wheel is on the side turned to. */
  readonly inner: Radians;
  readonly outer: Radians;
  /** Outer angle at which both would roll about one point, for this inner one. */
  readonly correctOuter: Radians;
  /** Outer less correct: positive where the outer wheel turns too far. */
  readonly error: Radians;
}

/**
 * How a rack turns both wheels of an axle, the right wheel being the mirror image of the left: a rack that moves to the left
 * (positive) moves to the right for the mirrored corner. Turns are counted from the wheels' own angle at rack nought. Null
 * where the rack does not reach. Correct is the condition of one turn centre on the line of the rear axle.
 */
export function computeSteeredAxle(geometry: CornerGeometry, rack: Metres, turn: TurnGeometry): SteeredAxle | null {
  const sweep = new TravelSweep(geometry);
  const toeAt = (at: number): number | null => {
    const p = sweep.solve({ travel: 0, rack: at });
    return "foldAt" in p ? null : p.attitude.toe;
  };
  const [straight, there, mirrored] = [toeAt(0), toeAt(rack), toeAt(-rack)];
  if (straight === null || there === null || mirrored === null) return null;
  // Toe in of a left wheel turns it to the right.
  const left = straight - there;
  const right = mirrored - straight;
  const leftIsInner = left + right > 0;
  const inner = Math.abs(leftIsInner ? left : right);
  const outer = Math.abs(leftIsInner ? right : left);
  const correctOuter = computeCorrectOuterAngle(inner, turn);
  return { left, right, inner, outer, correctOuter, error: outer - correctOuter };
}
