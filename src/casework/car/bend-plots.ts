import { type CarBalanceState, wheelPlaces } from "#engines/linkage";
import { degreesFromRadians } from "#quantity";
import { STANDARD_GRAVITY } from "#vehicle";
import { formatNumber } from "../fault/format-figure.ts";
import { spreadOf } from "../sampling/spread.ts";
import type { TravelLine, TravelPlot } from "../travel/travel-sheet.ts";
import { PLACE_WORDS } from "./bend-facts.ts";
import type { BendEnd, BendOver } from "./bend-states.ts";

/** Loads of all wheels and the lean over every bend, each with the band of the cars that may be. */
export function bendPlots({ steps, ends }: BendOver): readonly TravelPlot[] {
  if (steps.length < 2) return [];
  const line = (words: string, subject: TravelLine["subject"], of: (s: CarBalanceState) => number): TravelLine => {
    const spreads = steps.map(({ state, drawn }) => {
      const value = of(state);
      return { value, ...(drawn.length < 2 ? { low: value, high: value } : spreadOf(drawn.map(of))) };
    });
    return {
      state: "sound",
      words,
      subject,
      rises: steps.map(({ by }) => by),
      values: spreads.map(({ value }) => value),
      // The car on file lies in its own band, however the fifty fell.
      low: spreads.map(({ low, value }) => Math.min(low, value)),
      high: spreads.map(({ high, value }) => Math.max(high, value)),
    };
  };
  return [
    {
      figure: "load",
      title: "load of each wheel, kN",
      unit: "kN",
      lines: wheelPlaces.map((place) =>
        line(PLACE_WORDS[place], place.startsWith("front") ? "sound" : "beside", (s) => s[place].load / 1000),
      ),
      leftOut: ends.map(endWords),
    },
    {
      figure: "lean",
      title: "lean of the body, °, left side up is +",
      unit: "deg",
      lines: [line("lean", "sound", (s) => degreesFromRadians(s.roll))],
      leftOut: [],
    },
  ];
}

const endWords = ({ by, lifts, way }: BendEnd): string =>
  `bends to the ${way > 0 ? "left" : "right"} end at ${formatNumber(Math.abs(by) / STANDARD_GRAVITY, 2)} g${lifts === null ? "" : `: the ${PLACE_WORDS[lifts]} wheel lifts`}`;
