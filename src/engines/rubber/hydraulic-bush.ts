import type { Hertz, Kilograms, NewtonSecondsPerMetre, NewtonsPerMetre, Radians } from "#quantity";

/**
 * A bush filled with fluid, in its soft direction: rubber beside a fluid branch, in which the rubber's own volume rate
 * pushes a column of fluid through a passage. Inertia and damping of the column are referred to the movement of the bush.
 */
export interface HydraulicBush {
  readonly rubber: NewtonsPerMetre;
  /** Tangent of the rubber's own loss angle, the same at every frequency; nought or more. */
  readonly lossFactor: number;
  readonly volume: NewtonsPerMetre;
  readonly fluidInertia: Kilograms;
  readonly fluidDamping: NewtonSecondsPerMetre;
}

/** "leaked": the fluid is out, so the fluid branch is gone and the rubber alone is left. */
export type FluidState = "sound" | "leaked";
export const fluidStates: readonly FluidState[] = ["sound", "leaked"];

/** Force over movement as a complex number, N/m: the real part answers the movement, the imaginary part its speed. */
export interface ComplexStiffness {
  readonly real: NewtonsPerMetre;
  /** Never negative: a bush takes energy and gives none. */
  readonly imaginary: NewtonsPerMetre;
}

/** What a shaker reads at one frequency. */
export interface DynamicStiffness {
  readonly magnitude: NewtonsPerMetre;
  /** By how much the movement follows the force, 0 to pi. */
  readonly lossAngle: Radians;
}

export const angularFrequency = (frequency: Hertz): number => 2 * Math.PI * frequency;

/**
 * K(w) = k_r (1 + i eta) + k_v z/(k_v + z), z = i w c - w² m; leaked: k_r (1 + i eta) alone, so that the static rate is
 * what it was. `angular` is w in rad/s, nought or more (key fluid-branch in docs/sources.md).
 */
export function computeComplexStiffness(bush: HydraulicBush, state: FluidState, angular: number): ComplexStiffness {
  const { rubber, lossFactor, volume: kv } = bush;
  const own = { real: rubber, imaginary: rubber * lossFactor };
  if (state === "leaked") return own;
  const zr = -angular * angular * bush.fluidInertia;
  const zi = angular * bush.fluidDamping;
  const dr = kv + zr;
  // Divided by hand so that the imaginary part is seen to be k_v² w c/|k_v + z|², never negative.
  const size = dr * dr + zi * zi;
  return {
    real: own.real + (kv * (zr * dr + zi * zi)) / size,
    imaginary: own.imaginary + (kv * kv * zi) / size,
  };
}

/** Size of the stiffness and loss angle at a frequency above nought. */
export function computeDynamicStiffness(bush: HydraulicBush, state: FluidState, frequency: Hertz): DynamicStiffness {
  const { real, imaginary } = computeComplexStiffness(bush, state, angularFrequency(frequency));
  return { magnitude: Math.hypot(real, imaginary), lossAngle: Math.atan2(imaginary, real) };
}
