import { type FluidState, fluidStates } from "#engines/rubber";
import { kmPerHourFromMetresPerSecond, type MetresPerSecond, metresPerSecondFromKmPerHour } from "#quantity";
import { angularAt, computeGive, computeShakeForce, type ShakeModel } from "./shake-model.ts";

/** Road speeds a curve is drawn at, km/h: from town to more than most roads allow. */
const FROM_KMH = 40;
const TO_KMH = 200;
const STEP_KMH = 1;

export const SPEEDS: readonly MetresPerSecond[] = Array.from({ length: (TO_KMH - FROM_KMH) / STEP_KMH + 1 }, (_, i) =>
  metresPerSecondFromKmPerHour(FROM_KMH + i * STEP_KMH),
);

/**
 * Both curves of one model over the speeds, in metres of movement to either side per metre of thickness variation: the
 * chain is linear in it.
 */
export interface ShakeCurves {
  readonly sound: readonly number[];
  readonly leaked: readonly number[];
  /** Index of the speed at which the leaked one shakes most. */
  readonly worst: number;
  /** Leaked over sound at that speed. */
  readonly ratio: number;
}

export function computeShakeCurves(model: ShakeModel): ShakeCurves {
  const force = computeShakeForce(model, 1);
  const [sound, leaked] = fluidStates.map((state: FluidState) =>
    SPEEDS.map((speed) => force * computeGive(model, state, angularAt(model, speed))),
  ) as [number[], number[]];
  const worst = leaked.reduce((best, value, i) => (value > (leaked[best] as number) ? i : best), 0);
  return { sound, leaked, worst, ratio: (leaked[worst] as number) / (sound[worst] as number) };
}

/** Index of the speed of the curves nearest to this one; below nought or beyond them outside. */
export const indexOfSpeed = (speed: MetresPerSecond): number =>
  Math.round((kmPerHourFromMetresPerSecond(speed) - FROM_KMH) / STEP_KMH);

/** True within the speeds the curves are drawn at. */
export const isDrawnSpeed = (speed: MetresPerSecond): boolean => {
  const index = indexOfSpeed(speed);
  return index >= 0 && index < SPEEDS.length;
};
