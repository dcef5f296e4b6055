import { assumedMark, axleAndSide, type Corner, type Family, STANDARD_GRAVITY } from "#vehicle";
import type { Condition } from "../fault-effect.ts";
import { formatNumber } from "./format-figure.ts";

/** Largest share of its load a road tyre passes on along the road, dry (from memory, a working figure). */
export const GRIP = 1.1;
/**
 * The most force along the road that a wheel could pass on under the kind of force it is asked for, newtons: grip times
 * the load that force itself leaves on it (statics, twice the standing load at most). Braking loads the front and drive
 * the rear: N = standing + z P h / (2 E) at z = grip. Where both wheels of an axle push against their own load, braking
 * at the rear or drive at the front, F = grip standing / (1 + grip h / E). A bend loads the outer wheel by z P_axle h / t.
 */
export function computeUsableForce(family: Family, corner: Corner, condition: Condition): number {
  const { axle, side } = axleAndSide(corner);
  const { cgHeight, wheelbase } = family;
  const weight = family.kerbMass * STANDARD_GRAVITY;
  const share = axle === "front" ? family.frontWeightShare : 1 - family.frontWeightShare;
  const standing = (weight * share) / 2;
  const outer = condition.lateral !== 0 && (side === "left") === condition.lateral < 0;
  const sideTransfer = outer ? (GRIP * weight * share * cgHeight) / family[axle].track : 0;
  const forward = condition.drive - condition.braking;
  if (forward !== 0 && forward < 0 !== (axle === "front"))
    return (GRIP * (standing + sideTransfer)) / (1 + (GRIP * cgHeight) / wheelbase);
  const alongTransfer = forward === 0 ? 0 : (GRIP * weight * cgHeight) / (2 * wheelbase);
  return GRIP * Math.min(2 * standing, standing + alongTransfer + sideTransfer);
}

/** Said where a wheel is asked for more force than its tyre could pass on; null where it is not. */
export function beyondUsableWords(family: Family, corner: Corner, condition: Condition): string | null {
  const asked = Math.hypot(condition.drive - condition.braking, condition.lateral);
  const most = computeUsableForce(family, corner, condition);
  if (asked <= most) return null;
  const kn = (newtons: number): string => `${formatNumber(newtons / 1000, 1)} kN`;
  return `A tyre cannot pass on ${kn(asked)} here: with the load this wheel can carry, about ${kn(most)} is the most (grip ${GRIP}, from memory; centre of mass ${formatNumber(family.cgHeight * 1000, 0)} mm over the road${assumedMark(family, "centre-of-mass-height")}).`;
}
