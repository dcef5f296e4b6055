import type { LayoutDerivatives } from "#engines/linkage";
import { degreesFromRadians } from "#quantity";
import { bandOfAngles } from "../fault/change-band.ts";
import { isSignSure } from "../fault/settle.ts";
import type { Figure } from "../fault-effect.ts";
import { placeOfRate, pointWords } from "./bodies-words.ts";
import type { LayoutBand, LayoutStates } from "./layout-states.ts";

type Angle = "toe" | "camber";
const AXES = ["fore and aft", "across", "in height"] as const;
/** Numbers named as those that would settle a sign. */
const NAMED = 3;

/** One angle of a balance in degrees, less another's where that is given: value, deviation, and what does most to it. */
export function angleOf(states: LayoutStates, key: Angle, band: LayoutBand, less: LayoutBand | null) {
  const sds = states.deviationsOf(band.by);
  const parts = sds.map((sd, i) => sd * ((band.by[key][i] as number) - (less?.by[key][i] ?? 0)));
  return {
    value: degreesFromRadians(band.state.attitude[key] - (less?.state.attitude[key] ?? 0)),
    sd: degreesFromRadians(Math.hypot(...parts)),
    parts,
  };
}

interface ChangeAsked {
  readonly states: LayoutStates;
  readonly key: Angle;
  readonly label: string;
  /** The state looked at, in the middle first, and what it is held against. */
  readonly bands: readonly [LayoutBand, ...LayoutBand[]];
  readonly less: LayoutBand;
  readonly inputs: Figure["inputs"];
}

/** A change of an angle as a figure, its band over every given state. */
export function changeFigure({ states, key, label, bands, less, inputs }: ChangeAsked): Figure {
  const angles = bands.map((band) => angleOf(states, key, band, less));
  const [middle] = angles as [(typeof angles)[number], ...typeof angles];
  const sure = angles.every(({ value, sd }) => isSignSure(value, sd) && value * middle.value > 0);
  const range = angles.slice(1).map(({ value }) => value);
  return {
    key: `${key}-${label}`,
    label,
    unit: "deg",
    value: middle.value,
    u: middle.sd,
    range: range.length === 2 ? [Math.min(...range), Math.max(...range)] : null,
    // Where nothing is uncertain there is no band: rounded outward it would look like one.
    band: angles.every(({ sd }) => sd === 0) ? null : bandOfAngles(angles),
    rung: "measured",
    inputs,
    relation: "balance of all bodies, elastic forces from one potential; derivatives by the transposed stiffness",
    source: "forward-derivatives; docs/method/linkage-bodies.md",
    signSure: sure,
    settle: sure ? null : settledBy(states, less.by, middle.parts),
  };
}

/** The numbers a sign hangs on most. */
function settledBy(states: LayoutStates, { parameters }: LayoutDerivatives, parts: readonly number[]): string {
  const { mechanism, layout } = states.linkage;
  const most = parts
    .map((part, i) => ({ size: Math.abs(part), parameter: parameters[i] }))
    .filter(({ size }) => size > 0)
    .toSorted((a, b) => b.size - a.size)
    .slice(0, NAMED)
    .flatMap(({ parameter: p }) =>
      p === undefined
        ? []
        : [
            p.kind === "rate"
              ? `the rates of the ${placeOfRate(layout, p.name)}`
              : `the ${pointWords(layout, mechanism.pointNames[p.point] ?? "")} ${AXES[p.axis]}`,
          ],
    );
  return most.length === 0 ? "" : `Known better, these would settle it first: ${most.join(", ")}.`;
}
