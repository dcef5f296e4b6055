import { computeDynamicStiffness, type FluidState, fluidStates, type HydraulicBush } from "#engines/rubber";
import type { Hertz } from "#quantity";
import { type Spread, spreadOf } from "../sampling/spread.ts";
import type { BandedLine, BushLine } from "../shake.ts";

/** What a shaker would run through, hertz: from a slow push to well above where a wheel turns on the road. */
export const FREQUENCIES: readonly Hertz[] = Array.from({ length: 50 }, (_, i) => i + 1);

/** Spreads over drawn bushes at every frequency. */
interface DynamicsSpread {
  readonly stiffness: readonly Spread[];
  readonly lossAngle: readonly Spread[];
}
export type DynamicsBand = Readonly<Record<FluidState, DynamicsSpread>>;

/** How stiffness and loss angle of a bush scatter over bushes as they may be. */
export function spreadDynamics(bushes: readonly HydraulicBush[]): DynamicsBand {
  const of = (state: FluidState): DynamicsSpread => {
    const drawn = FREQUENCIES.map((frequency) => bushes.map((bush) => computeDynamicStiffness(bush, state, frequency)));
    return {
      stiffness: drawn.map((all) => spreadOf(all.map(({ magnitude }) => magnitude))),
      lossAngle: drawn.map((all) => spreadOf(all.map(({ lossAngle }) => lossAngle))),
    };
  };
  return { sound: of("sound"), leaked: of("leaked") };
}

const banded = (values: readonly number[], spreads: readonly Spread[]): BandedLine => ({
  values,
  low: spreads.map(({ low }) => low),
  high: spreads.map(({ high }) => high),
});

/** What a shaker reads of the bush alone, with its fluid and without, over the frequency. */
export const computeBushLines = (bush: HydraulicBush, band: DynamicsBand): readonly BushLine[] =>
  fluidStates.map((state) => {
    const read = FREQUENCIES.map((frequency) => computeDynamicStiffness(bush, state, frequency));
    return {
      state,
      stiffness: banded(
        read.map(({ magnitude }) => magnitude),
        band[state].stiffness,
      ),
      lossAngle: banded(
        read.map(({ lossAngle }) => lossAngle),
        band[state].lossAngle,
      ),
    };
  });
