import { findSignChanges } from "#numeric";
import type { Hertz, Radians } from "#quantity";
import { angularFrequency, computeDynamicStiffness, type HydraulicBush } from "./hydraulic-bush.ts";
import { findLargest } from "./largest-in-range.ts";
import { angleExtremes, makeStiffnessRatio } from "./stiffness-ratio.ts";

export interface PeakLoss {
  readonly frequency: Hertz;
  readonly lossAngle: Radians;
  /** The largest loss angle of the range lies at one of its ends. */
  readonly atEnd: boolean;
}

/**
 * Where a sound bush has its largest loss angle within a closed range of frequencies (0 < low < high): the global
 * maximum, by the roots of its derivative's numerator. A leaked bush has the same loss angle everywhere.
 */
export function solvePeakLoss(bush: HydraulicBush, range: readonly [low: Hertz, high: Hertz]): PeakLoss {
  const [low, high] = range;
  const turns = findSignChanges(angleExtremes(makeStiffnessRatio(bush, 0, angularFrequency(high))), low / high, 1);
  const angle = (frequency: Hertz): Radians => computeDynamicStiffness(bush, "sound", frequency).lossAngle;
  const { at, value, atEnd } = findLargest(
    angle,
    range,
    turns.map((t) => t * high),
  );
  return { frequency: at, lossAngle: value, atEnd };
}
