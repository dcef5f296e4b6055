import { computeFailureProbability, computeMedianLife, type Life } from "#engines/planning";
import type { Family, Limit, PracticeLife } from "#vehicle";
import type { CarRemedy } from "./remedies.ts";
import { wornShare } from "./worn-share.ts";

/** How long a remedy's part lasts from here, from a practice band and the distance it has lasted; null where none is on file. */
export interface RemainingLife {
  readonly life: Life;
  readonly source: string;
  /** The distance it has lasted, as far as it is known. */
  readonly ageKm: number;
  /** How that distance is known: the odometer, as if it were fitted when the car was new; or how far it is worn. */
  readonly ageFrom: "odometer" | "wear";
  /**
   * What the look says: false where it was found worn or worse. The band then still speaks of parts that are sound at
   * this distance, so every chance of not lasting is a lower bound.
   */
  readonly sound: boolean;
}

/** From this grade on a part is no longer sound for what the band says of it. */
const WORN_FROM = 2;

/** Weibull through the 10 % and 90 % points of a band: -ln(1-p) = (x/scale)^shape. */
export function lifeOfBand(band: Pick<PracticeLife, "lowKm" | "highKm">): Life {
  const [a, b] = [-Math.log(0.9), -Math.log(0.1)];
  const shape = Math.log(b / a) / Math.log(band.highKm / band.lowKm);
  return { family: "weibull", shape, scale: band.lowKm / a ** (1 / shape) };
}

/** The band of that finding of a remedy whose half of such parts goes first from here; null where none has a band. */
export function remainingLife(
  family: Family,
  limits: readonly Limit[],
  remedy: CarRemedy,
  odometerKm: number,
): RemainingLife | null {
  const lives = remedy.findings.flatMap((finding): RemainingLife[] => {
    const place = `${finding.axle}/${finding.place.slice(finding.place.indexOf("/") + 1)}`;
    const band = family.life.find((l) => l.position === place);
    if (!band) return [];
    const life = lifeOfBand(band);
    const worn = wornShare(family, limits, finding);
    return [
      {
        life,
        source: band.source,
        ageKm: worn === null ? odometerKm : Math.min(odometerKm, worn * computeMedianLife(life)),
        ageFrom: worn === null ? "odometer" : "wear",
        sound: (finding.grade ?? 0) < WORN_FROM,
      },
    ];
  });
  const [first, ...others] = lives;
  return first === undefined
    ? null
    : others.reduce((soonest, one) => (solveHalfGoneKm(one) < solveHalfGoneKm(soonest) ? one : soonest), first);
}

/**
 * Chance (0 to 1) that a unit that has lasted this long does not last another `further` km: 1 - S(age + further)/S(age).
 * At least so much where it was found worn.
 */
export const riskOver = ({ life, ageKm }: RemainingLife, furtherKm: number): number =>
  computeFailureProbability(life, ageKm, ageKm + furtherKm);

/** Distance from here, km, by which half of the units that have lasted this long have gone; by bisection to 1 km. */
export function solveHalfGoneKm(remaining: RemainingLife): number {
  let [low, high] = [0, Math.max(1, computeMedianLife(remaining.life))];
  while (riskOver(remaining, high) < 0.5) high *= 2;
  while (high - low > 1) {
    const middle = (low + high) / 2;
    if (riskOver(remaining, middle) < 0.5) low = middle;
    else high = middle;
  }
  return high;
}
