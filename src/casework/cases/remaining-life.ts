import { computeFailureProbability, computeMedianLife, type Life } from "#engines/planning";
import type { Family, PracticeLife } from "#vehicle";
import type { CarRemedy } from "./remedies.ts";

/** How long a remedy's part lasts from new, from a practice band; null where none is on file. */
export interface RemainingLife {
  readonly life: Life;
  readonly source: string;
  readonly ageKm: number;
}

/** Weibull through the 10 % and 90 % points of a band: -ln(1-p) = (x/scale)^shape. */
export function lifeOfBand(band: Pick<PracticeLife, "lowKm" | "highKm">): Life {
  const [a, b] = [-Math.log(0.9), -Math.log(0.1)];
  const shape = Math.log(b / a) / Math.log(band.highKm / band.lowKm);
  return { family: "weibull", shape, scale: band.lowKm / a ** (1 / shape) };
}

/** The band of the first finding of a remedy that has one. */
export function remainingLife(family: Family, remedy: CarRemedy, odometerKm: number): RemainingLife | null {
  for (const finding of remedy.findings) {
    const place = `${finding.axle}/${finding.place.slice(finding.place.indexOf("/") + 1)}`;
    const band = family.life.find((l) => l.position === place);
    if (band) return { life: lifeOfBand(band), source: band.source, ageKm: odometerKm };
  }
  return null;
}

/** Chance (0 to 1) that a unit of this age does not last another `further` km. */
export const riskOver = ({ life, ageKm }: RemainingLife, furtherKm: number): number =>
  computeFailureProbability(life, ageKm, ageKm + furtherKm);

/** Distance, km, by which half of the units of this age have gone; by bisection to 1 km. */
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
