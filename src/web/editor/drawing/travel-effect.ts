import { type RankedFigure, rankCoordinates } from "#casework";
import { askDoor, formatTravelQuestion } from "#contract";
import { mmFromMetres } from "#quantity";
import type { Axle, AxleName, Family } from "../../car.ts";

export interface TravelQuestion {
  /** As it is kept; null where that cannot be drawn. */
  readonly kept: Family | null;
  readonly entered: Family;
  readonly axle: AxleName;
}

/** An angle of the left wheel over its travel, [mm, degrees], travel rising. */
export type AngleLine = readonly (readonly [travel: number, angle: number])[];

/** How an angle changes from ride height to one travel, and how sure that is. */
export interface AngleChange {
  readonly travel: number;
  /** Degrees. */
  readonly value: number;
  /** Standard deviation, degrees, from what the sheet says of each point. */
  readonly sd: number;
  readonly kept: number | null;
  /** The coordinate that does most to it, with its share of the variance; null where nothing does. */
  readonly most: RankedFigure["coordinates"][number] | null;
}

/** A figure as entered and how it stood as kept. */
export interface DecidedFigure extends RankedFigure {
  /** null: the sheet as kept cannot be computed. */
  readonly wasPrintable: boolean | null;
}

export interface TravelEffect {
  readonly toe: { readonly kept: AngleLine; readonly entered: AngleLine; readonly changes: readonly AngleChange[] };
  readonly camber: { readonly kept: AngleLine; readonly entered: AngleLine; readonly changes: readonly AngleChange[] };
  /** What the points decide, each figure with the coordinates that do most to it. */
  readonly figures: readonly DecidedFigure[];
}

/** Figures are given so far up and down, mm, or at the stop where that comes first. */
const FIGURE_TRAVEL = 50;
const FURTHEST = 80;
const EACH_WAY = 8;
/** Two travels are one below this difference, mm. */
const SAME_TRAVEL = 1e-9;

const stops = (axle: Axle, furthest: number): readonly [number, number] => [
  -Math.min(mmFromMetres(axle.droopStop), furthest),
  Math.min(mmFromMetres(axle.bumpStop), furthest),
];

/** Travels at which the angles are drawn, mm, rising; ride height and the places of the figures among them. */
export const travelsOf = (axle: Axle): readonly number[] => {
  const [low, high] = stops(axle, FURTHEST);
  const ways = Array.from({ length: EACH_WAY }, (_, i) => (i + 1) / EACH_WAY);
  const all = [0, ...ways.map((way) => way * low), ...ways.map((way) => way * high), ...stops(axle, FIGURE_TRAVEL)];
  return [...new Set(all)].toSorted((a, b) => a - b);
};

interface Position {
  readonly toe_deg: number;
  readonly camber_deg: number;
}
type Swept = readonly (readonly [travel: number, position: Position])[];

/** The rigid linkage of the left wheel as linkage.travel answers; what it refuses (beyond a fold) is left out. */
const sweep = (family: Family, axle: AxleName, travels: readonly number[]): Swept => {
  const answer = askDoor("linkage.travel", formatTravelQuestion(family, `${axle}-left`, travels));
  if ("findings" in answer) return [];
  const { positions } = answer.output as { readonly positions: readonly (Position | { readonly refused: unknown })[] };
  return travels.flatMap((travel, index) => {
    const position = positions[index];
    return position === undefined || "refused" in position ? [] : [[travel, position] as const];
  });
};

/**
 * Toe and camber of the left wheel over its travel, as kept and as entered, from the door linkage.travel; how sure
 * they and the other figures are, and of which coordinates, as entered.
 * @returns lines that end where the linkage binds, and none where it cannot be computed
 */
export const computeTravelEffect = ({ kept, entered, axle }: TravelQuestion): TravelEffect => {
  const now = sweep(entered, axle, travelsOf(entered[axle]));
  const before = kept === null ? [] : sweep(kept, axle, travelsOf(kept[axle]));
  const ranked = rankCoordinates(entered, axle);
  const rankedKept = kept === null ? [] : rankCoordinates(kept, axle);
  const angle = (name: "toe" | "camber"): TravelEffect["toe"] => {
    const line = (swept: Swept): AngleLine => swept.map(([travel, position]) => [travel, position[`${name}_deg`]]);
    const keptLine = line(before);
    const rest = keptLine.find(([travel]) => travel === 0)?.[1];
    return {
      kept: keptLine,
      entered: line(now),
      changes: ranked
        .filter(({ key }) => key === `${name}-bump` || key === `${name}-droop`)
        .toSorted((a, b) => a.travel - b.travel)
        .map(({ travel, value, sd, coordinates }) => {
          const then = keptLine.find(([at]) => Math.abs(at - travel) < SAME_TRAVEL)?.[1];
          return {
            travel,
            value,
            sd,
            kept: then === undefined || rest === undefined ? null : then - rest,
            most: coordinates[0] ?? null,
          };
        }),
    };
  };
  const figures = ranked.map((figure) => ({
    ...figure,
    wasPrintable: rankedKept.find(({ key }) => key === figure.key)?.printable ?? null,
  }));
  return { toe: angle("toe"), camber: angle("camber"), figures };
};
