import type { Radians } from "#quantity";

/** Caster by the two-reading rule, and the factor of the rule. */
export interface CasterReading {
  readonly caster: Radians;
  /** Caster per camber difference; pure number. */
  readonly factor: number;
}

/**
 * Caster from the camber read with the wheel turned in by `sweep` and out by `sweep` (toe angles from straight ahead):
 * caster = (camber out - camber in)/(2 sin sweep). First order in caster and inclination: 0.006 deg too much at 4 and
 * 8 deg; the exact axis comes from three readings (computeSteeringAxisFromReadings). Source: check-values-geometry.
 */
export function computeCasterFromSweep(camberIn: Radians, camberOut: Radians, sweep: Radians): CasterReading {
  const factor = 1 / (2 * Math.sin(sweep));
  return { caster: (camberOut - camberIn) * factor, factor };
}
