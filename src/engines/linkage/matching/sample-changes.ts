import type { CornerGeometry } from "../geometry.ts";
import { TravelSweep } from "../solve-travel.ts";
import type { Match } from "./match-corner.ts";
import { shiftPoints } from "./shift-points.ts";

/** A figure over the drawn geometries: mean, standard deviation, middle 95 %, and the share of them above nought. */
export interface SampledFigure {
  readonly mean: number;
  readonly sd: number;
  readonly low: number;
  readonly high: number;
  readonly shareAbove: number;
}

/** Changes of camber and toe from design height to one travel over the drawn geometries; radians. */
export interface SampledChanges {
  readonly travel: number;
  readonly camberChange: SampledFigure;
  readonly toeChange: SampledFigure;
  /** Drawn geometries that cannot reach the travel; the figures leave them out. */
  readonly unreachable: number;
}

/**
 * Bands by drawing geometries with the variances a match left (or the prior's, without readings) and solving each in
 * full: holds where tolerances are too large for first derivatives. `count` at least 2; null at a travel that fewer than
 * two of them reach.
 */
export function sampleChanges(
  prior: CornerGeometry,
  match: Match,
  travels: readonly number[],
  count: number,
  normal: () => number,
): readonly (SampledChanges | null)[] {
  const camber = travels.map((): number[] => []);
  const toe = travels.map((): number[] => []);
  for (let k = 0; k < count; k++) {
    const shifts = match.errors.shifts(match.posterior.draw(match.sources, normal));
    const sweep = new TravelSweep(shiftPoints(prior, shifts));
    travels.forEach((travel, i) => {
      const position = sweep.solve({ travel, rack: 0 });
      if ("foldAt" in position) return;
      camber[i]?.push(position.attitude.camber - prior.wheel.camber);
      toe[i]?.push(position.attitude.toe - prior.wheel.toe);
    });
  }
  return travels.map((travel, i) => {
    const [cambers, toes] = [camber[i] ?? [], toe[i] ?? []];
    if (toes.length < 2) return null;
    return {
      travel,
      camberChange: describe(cambers),
      toeChange: describe(toes),
      unreachable: count - toes.length,
    };
  });
}

function describe(values: readonly number[]): SampledFigure {
  const n = values.length;
  const sorted = [...values].sort((a, b) => a - b);
  const mean = values.reduce((a, b) => a + b, 0) / n;
  const sd = Math.sqrt(values.reduce((a, b) => a + (b - mean) ** 2, 0) / (n - 1));
  return {
    mean,
    sd,
    low: quantile(sorted, 0.025),
    high: quantile(sorted, 0.975),
    shareAbove: values.filter((x) => x > 0).length / n,
  };
}

/** Between neighbours in order, straight. */
function quantile(sorted: readonly number[], p: number): number {
  const place = p * (sorted.length - 1);
  const below = Math.floor(place);
  const [a, b] = [sorted[below] as number, sorted[Math.min(below + 1, sorted.length - 1)] as number];
  return a + (place - below) * (b - a);
}
