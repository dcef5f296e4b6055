import type { WheelBand } from "#engines/linkage";
import { type Jet, subtractJets } from "#numeric";
import { radiansFromDegrees } from "#quantity";
import { isSignSure, NEVER_SETTLED, settleSign } from "../fault/settle.ts";
import type { CornerWalk } from "./corner-walk.ts";
import { type ComparedChange, capital, compareChanges, comparedWords, heightWords } from "./row-words.ts";
import type { TravelRow } from "./travel-sheet.ts";

/** What an alignment stand leaves of an angle as standard deviation, degrees, with the wheels left on; from memory. */
const READ_ANGLE = 0.03;
/** One at either height of either car. */
const READINGS = 4;

/** A whole corner as it was walked, and what is said of it. */
export interface WalkedRow {
  readonly name: string;
  readonly walk: CornerWalk;
  readonly row: TravelRow;
}

/** What of a comparison is open, and the readings that would close it. */
export interface OpenComparison {
  readonly asked: string;
  readonly settle: string;
}

/**
 * For each figure and height at which it is too close to call which of two corners moves more: the readings after which it
 * would be sure, those of both cars in one order, what does most first.
 */
export function settleBetween(own: WalkedRow, beside: WalkedRow): readonly OpenComparison[] {
  return (["camber", "toe"] as const)
    .flatMap((key) => compareChanges(key, own.row, beside.row))
    .filter(({ sure }) => !sure)
    .flatMap((compared) => {
      const cars = [own, beside].flatMap((corner, i) => {
        const jet = changeJet(corner.walk, compared, i === 0 ? compared.one.travel : compared.other.travel);
        const { jets } = corner.walk.state.band;
        return jet ? [{ jets, jet, assembly: corner.walk.model.assembly, of: ` of the ${corner.name}` }] : [];
      });
      if (cars.length < 2) return [];
      const points = settleSign(radiansFromDegrees(compared.difference), cars);
      const settle = points === NEVER_SETTLED ? readAngles(compared) : points;
      return settle === "" ? [] : [{ asked: capital(comparedWords(compared)), settle }];
    });
}

/** Where no measuring of joints settles it: whether the angle itself, read on both cars at both heights, would. */
function readAngles({ key, difference, one }: ComparedChange): string {
  const sd = READ_ANGLE * Math.sqrt(READINGS);
  const read = `${key} read on both cars at ride height and at ${heightWords(one)} (±${2 * READ_ANGLE}° each, from memory)`;
  return isSignSure(difference, sd)
    ? `No measuring of joints settles it; ${read} does, if they differ as computed.`
    : `Neither measuring all joints nor ${read} settles it: the difference lies too near to nought.`;
}

function changeJet(walk: CornerWalk, { key }: ComparedChange, travel: number): Jet | null {
  const [at, rest] = [travel, 0].map((rise): WheelBand | null => walk.solveAt(rise));
  return at && rest ? subtractJets(at[key], rest[key]) : null;
}
