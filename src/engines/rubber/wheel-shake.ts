import { findSignChanges } from "#numeric";
import type {
  Hertz,
  Kilograms,
  Metres,
  MetresPerSecond,
  NewtonMetres,
  Newtons,
  NewtonsPerMetre,
  Share,
} from "#quantity";
import { angularFrequency, computeComplexStiffness, type FluidState, type HydraulicBush } from "./hydraulic-bush.ts";
import { findLargest } from "./largest-in-range.ts";
import { makeStiffnessRatio, sizeExtremes } from "./stiffness-ratio.ts";

/** Disc and caliper, as far as they make torque of thickness. */
export interface DiscBrake {
  readonly effectiveRadius: Metres;
  readonly friction: Share;
  /** Clamp force on one pad per thickness of the disc, the pedal held. */
  readonly caliper: NewtonsPerMetre;
}

/**
 * Amplitude of the brake torque that a harmonic of the disc's thickness makes at a held pedal: 2 mu k_c (p/2) r, with p
 * peak to peak; both pads carry the clamp force (key torque-ripple in docs/sources.md).
 */
export const computeTorqueRipple = (peakToPeak: Metres, disc: DiscBrake): NewtonMetres =>
  2 * disc.friction * disc.caliper * (peakToPeak / 2) * disc.effectiveRadius;

/** Force along the road that a torque is at the ground: torque over the rolling radius, circumference/(2 pi). */
export const computeRoadForce = (torque: NewtonMetres, circumference: Metres): Newtons =>
  torque / (circumference / (2 * Math.PI));

/** How often a harmonic of the wheel comes by at a road speed. */
export const computeOrderFrequency = (order: number, speed: MetresPerSecond, circumference: Metres): Hertz =>
  (order * speed) / circumference;

/**
 * Amplitude of the wheel's fore-aft movement for a force of 1 N (m/N) at a frequency: 1/|K - M w²|, the wheel's mass on
 * the bush alone. Tyre compliance and the inertia of the wheel's spin are left out: good well below 30 Hz (key
 * fore-aft-wheel in docs/sources.md). Infinite where nothing damps the wheel on its resonance.
 */
export function computeWheelResponse(
  bush: HydraulicBush,
  state: FluidState,
  mass: Kilograms,
  frequency: Hertz,
): number {
  const angular = angularFrequency(frequency);
  const { real, imaginary } = computeComplexStiffness(bush, state, angular);
  return 1 / Math.hypot(real - mass * angular * angular, imaginary);
}

/** Frequency at which a wheel on a leaked bush answers most: sqrt(k_r/M)/(2 pi). */
export const computeLeakedResonance = (bush: HydraulicBush, mass: Kilograms): Hertz =>
  Math.sqrt(bush.rubber / mass) / (2 * Math.PI);

export interface WorstResponse {
  readonly frequency: Hertz;
  /** m/N. */
  readonly response: number;
  readonly atEnd: boolean;
}

/** The largest response of the wheel in a closed range of frequencies (0 <= low < high): the global maximum. */
export function solveWorstResponse(
  bush: HydraulicBush,
  state: FluidState,
  mass: Kilograms,
  range: readonly [low: Hertz, high: Hertz],
): WorstResponse {
  const [low, high] = range;
  const turns =
    state === "leaked"
      ? [computeLeakedResonance(bush, mass)]
      : findSignChanges(sizeExtremes(makeStiffnessRatio(bush, mass, angularFrequency(high))), low / high, 1).map(
          (t) => t * high,
        );
  const response = (frequency: Hertz): number => computeWheelResponse(bush, state, mass, frequency);
  const { at, value, atEnd } = findLargest(response, range, turns);
  return { frequency: at, response: value, atEnd };
}
