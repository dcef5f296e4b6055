import type { BodiesAsked } from "../bodies.ts";
import { bandOfAngles } from "../fault/change-band.ts";
import type { TravelLine, TravelPlot } from "../travel/travel-sheet.ts";
import { faultOnLine } from "./bodies-words.ts";
import { angleOf } from "./layout-change.ts";
import type { LayoutBand, LayoutStates } from "./layout-states.ts";

type Walk = readonly (LayoutBand | null)[];

/** Toe and camber over travel: a line for the sound state, one for the fault over its range (the middle first). */
export const plotBodies = (
  { fault }: BodiesAsked,
  states: LayoutStates,
  rises: readonly number[],
  walks: { readonly sound: Walk; readonly faulty: readonly Walk[] },
): readonly TravelPlot[] =>
  (["toe", "camber"] as const).map((key) => {
    const along = { key, states, rises };
    return {
      figure: key,
      title: key === "toe" ? "toe, °, in is +" : "camber, °",
      unit: "deg",
      lines: [
        { state: "sound" as const, words: "sound", subject: "sound" as const, ...follow(along, [walks.sound]) },
        ...(fault === null
          ? []
          : [
              {
                state: fault.kind,
                words: faultOnLine(fault),
                subject: "rubber" as const,
                ...follow(along, walks.faulty),
              },
            ]),
      ],
      leftOut: [],
    };
  });

interface Along {
  readonly key: "toe" | "camber";
  readonly states: LayoutStates;
  readonly rises: readonly number[];
}

/** Values and bands at every rise at which all states find a balance. */
function follow(
  { key, states, rises }: Along,
  over: readonly Walk[],
): Pick<TravelLine, "rises" | "values" | "low" | "high"> {
  const points = rises.flatMap((rise, i) => {
    const bands = over.flatMap((walk) => walk[i] ?? []);
    if (bands.length < over.length) return [];
    const angles = bands.map((band) => angleOf(states, key, band, null));
    const [low, high] = bandOfAngles(angles);
    return [{ rise, value: angles[0]?.value ?? 0, low, high }];
  });
  return {
    rises: points.map((p) => p.rise),
    values: points.map((p) => p.value),
    low: points.map((p) => p.low),
    high: points.map((p) => p.high),
  };
}
