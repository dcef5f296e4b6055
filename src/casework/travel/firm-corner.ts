import type { ElasticFault } from "#engines/linkage";
import type { Finding } from "#numeric";
import { axleAndSide, type Corner, type Family, positionsOf } from "#vehicle";
import { type CornerModel, jointOf, softFaults } from "../fault/corner-model.ts";
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

/** The engine's faults for every rubber of a corner with its rates times `factor`; ball joints keep theirs. */
export function firmFaults(
  family: Family,
  corner: Corner,
  { assembly }: Pick<CornerModel, "assembly">,
  factor: number,
): readonly ElasticFault[] {
  const { axle, side } = axleAndSide(corner);
  const faults = positionsOf(family)
    .filter((place) => place.axle === axle && place.side === side)
    .flatMap((place) => {
      const joint = jointOf(assembly, place);
      const isRubber = joint !== null && joint.radial !== null && joint.kind !== "ball-joint";
      return isRubber ? softFaults(assembly, place, factor) : [];
    });
  return [...new Map(faults.map((fault) => [JSON.stringify(fault), fault])).values()];
}
