import { type FluidState, fluidStates } from "#engines/rubber";
import { type MetresPerSecond, metresPerSecondFromKmPerHour } from "#quantity";
import { computeAmplitude, type ShakeModel } from "./shake-model.ts";

/** Road speeds a curve is drawn at, km/h: from town to more than most roads allow. */
const FROM_KMH = 40;
const TO_KMH = 200;
const STEP_KMH = 1;

export const SPEEDS: readonly MetresPerSecond[] = Array.from({ length: (TO_KMH - FROM_KMH) / STEP_KMH + 1 }, (_, i) =>
  metresPerSecondFromKmPerHour(FROM_KMH + i * STEP_KMH),
);

/** Both curves of one model over the speeds, with what is read from them. */
export interface ShakeCurves {
  readonly sound: readonly number[];
  readonly leaked: readonly number[];
  /** Index of the speed at which the leaked one shakes most. */
  readonly worst: number;
  /** Leaked over sound at that speed. */
  readonly ratio: number;
}

export function computeShakeCurves(model: ShakeModel): ShakeCurves {
  const [sound, leaked] = fluidStates.map((state: FluidState) =>
    SPEEDS.map((speed) => computeAmplitude(model, state, speed)),
  ) as [number[], number[]];
  const worst = leaked.reduce((best, value, i) => (value > (leaked[best] as number) ? i : best), 0);
  return { sound, leaked, worst, ratio: (leaked[worst] as number) / (sound[worst] as number) };
}
