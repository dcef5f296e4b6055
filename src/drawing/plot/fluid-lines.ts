import type { BandedLine } from "#casework";
import { polygon, polyline, type Spot } from "../path.ts";
import type { Mark } from "../scene.ts";
import { stateColours, strokes } from "../tokens.ts";

/** A bush with its fluid is drawn in ink, one without in the colour of a finding. */
export const fluidNames = { sound: "sound", leaked: "fluid gone" } as const;
export const fluidColours = { sound: stateColours.sound, leaked: stateColours.torn } as const;
type State = keyof typeof fluidNames;

/** A line and the outline of its band, in page units. */
export interface LaidLine {
  readonly state: State;
  readonly spots: readonly Spot[];
  readonly band: string;
}

export const layStateLine = (
  state: State,
  { values, low, high }: BandedLine,
  spotsOf: (values: readonly number[]) => readonly Spot[],
): LaidLine => ({
  state,
  spots: spotsOf(values),
  band: polygon([...spotsOf(low), ...spotsOf(high).toReversed()]),
});

/** Bands under all lines. */
export const drawStateLines = (lines: readonly LaidLine[]): readonly Mark[] => [
  ...lines.map(
    ({ state, band }): Mark => ({
      kind: "path",
      d: band,
      fill: fluidColours[state],
      opacity: state === "sound" ? 0.1 : 0.16,
    }),
  ),
  ...lines.map(
    ({ state, spots }): Mark => ({
      kind: "path",
      d: polyline(spots),
      stroke: { colour: fluidColours[state], width: strokes.curve, cap: "round" },
    }),
  ),
];
