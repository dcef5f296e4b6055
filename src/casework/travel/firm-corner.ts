import type { Finding } from "#numeric";
import { axleAndSide, type Corner, type CornerAssembly, type Family, type Position, positionsOf } from "#vehicle";
import { jointOf } from "../fault/corner-model.ts";
import { checkFirmer, firmnessOf } from "../fault/firmer-rubber.ts";
import type { FirmerRubber } from "../fault-effect.ts";

/** How many times all rates are, in the middle and at both ends where they are a range. */
export interface FirmFactors {
  readonly middle: number;
  readonly ends: readonly number[];
}

/**
 * The factor on every rubber of a corner, or what keeps it from being told: one old hardness must be said for all, since
 * each place may hold another on file.
 */
export function firmFactors(firmer: FirmerRubber): FirmFactors | { readonly findings: readonly Finding[] } {
  const findings = checkFirmer(firmer, null);
  if (findings.length > 0) return { findings };
  if ("factor" in firmer) return { middle: firmer.factor, ends: [] };
  const firmness = firmnessOf(firmer, null);
  return firmness ? { middle: firmness.factor, ends: [firmness.low, firmness.high] } : { middle: 1, ends: [] };
}

/** Every position of a corner that holds rubber with a rate; a ball joint holds none. */
export function rubberOf(family: Family, corner: Corner, assembly: CornerAssembly): readonly Position[] {
  const { axle, side } = axleAndSide(corner);
  return positionsOf(family).filter((place) => {
    if (place.axle !== axle || place.side !== side) return false;
    const joint = jointOf(assembly, place);
    return joint !== null && joint.radial !== null && joint.kind !== "ball-joint";
  });
}
