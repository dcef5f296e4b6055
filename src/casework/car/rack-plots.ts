import { degreesFromRadians } from "#quantity";
import { spreadOf } from "../sampling/spread.ts";
import type { TravelLine, TravelPlot } from "../travel/travel-sheet.ts";
import type { RackFacts } from "./car-facts.ts";
import type { RackReading } from "./rack-spread.ts";

/** The outer wheel against the exact condition and both cambers over the rack, each with its band. */
export function rackPlots({ over }: RackFacts): readonly TravelPlot[] {
  if (over.length < 2) return [];
  const line = (words: string, of: (read: RackReading) => number): TravelLine => {
    const spreads = over.map(({ read, drawn }) => {
      const value = degreesFromRadians(of(read));
      const all = drawn.map((one) => degreesFromRadians(of(one)));
      const { low, high } = all.length < 2 ? { low: value, high: value } : spreadOf(all);
      return { value, low: Math.min(low, value), high: Math.max(high, value) };
    });
    return {
      state: "sound",
      words,
      subject: "sound",
      rises: over.map(({ amount }) => amount),
      values: spreads.map(({ value }) => value),
      low: spreads.map(({ low }) => low),
      high: spreads.map(({ high }) => high),
    };
  };
  return [
    {
      figure: "toe",
      title: "outer wheel beyond the exact angle, °",
      unit: "deg",
      lines: [line("outer less exact", ({ error }) => error)],
      leftOut: ["exact: both wheels roll about one point on the line of the rear axle"],
    },
    {
      figure: "camber",
      title: "camber against the ground, from straight ahead, °",
      unit: "deg",
      lines: [
        line("front left", ({ camber }) => camber.frontLeft),
        line("front right", ({ camber }) => camber.frontRight),
      ],
      leftOut: [],
    },
  ];
}
