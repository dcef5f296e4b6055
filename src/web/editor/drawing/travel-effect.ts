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
  /** Standard deviation, degrees, where every point of the axle is known as well as the least known one. */
  readonly sd: number;
  readonly kept: number | null;
  /** The coordinate that does most to it, with its share of the variance; null where nothing does. */
  readonly most: { readonly point: string; readonly axis: string; readonly share: number } | null;
}

export interface TravelEffect {
  readonly toe: { readonly kept: AngleLine; readonly entered: AngleLine; readonly changes: readonly AngleChange[] };
  readonly camber: { readonly kept: AngleLine; readonly entered: AngleLine; readonly changes: readonly AngleChange[] };
}

/** Figures are given so far up and down, mm, or at the stop where that comes first. */
const FIGURE_TRAVEL = 50;
const FURTHEST = 80;
const EACH_WAY = 8;

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

interface BandPosition {
  readonly travel_mm: number;
  readonly toe_change_deg: number;
  readonly toe_change_sd_deg: number;
  readonly camber_change_deg: number;
  readonly camber_change_sd_deg: number;
  readonly top: Readonly<Record<"toe_change" | "camber_change", readonly NonNullable<AngleChange["most"]>[]>>;
}

/** The largest standard deviation of any hard point of an axle along x, y, z, mm: nothing is made surer than it is. */
const largestDeviation = ({ links, strut, trailingArm }: Axle): readonly [number, number, number] => {
  const points = [
    ...links.flatMap(({ inner, outer }) => [inner, outer]),
    ...(strut === undefined ? [] : [strut.top, strut.axisPoint]),
    ...(trailingArm === undefined ? [] : [trailingArm.bush]),
  ];
  const along = (axis: 0 | 1 | 2): number => Math.max(...points.map(({ sd }) => mmFromMetres(sd[axis])));
  return [along(0), along(1), along(2)];
};

const bandsAt = (family: Family, axle: AxleName, travels: readonly number[]): readonly BandPosition[] => {
  const [x, y, z] = largestDeviation(family[axle]);
  const { steps: _, ...corner } = formatTravelQuestion(family, `${axle}-left`, []);
  const answer = askDoor("linkage.band", { ...corner, sd_mm: { x, y, z }, travels_mm: travels });
  return "findings" in answer ? [] : (answer.output as { readonly positions: readonly BandPosition[] }).positions;
};

/**
 * Toe and camber of the left wheel over its travel, as kept and as entered, from the doors linkage.travel and
 * linkage.band.
 * @returns lines that end where the linkage binds, and none where it cannot be computed
 */
export const computeTravelEffect = ({ kept, entered, axle }: TravelQuestion): TravelEffect => {
  const now = sweep(entered, axle, travelsOf(entered[axle]));
  const before = kept === null ? [] : sweep(kept, axle, travelsOf(kept[axle]));
  const bands = bandsAt(entered, axle, stops(entered[axle], FIGURE_TRAVEL));
  const angle = (name: "toe" | "camber"): TravelEffect["toe"] => {
    const line = (swept: Swept): AngleLine => swept.map(([travel, position]) => [travel, position[`${name}_deg`]]);
    const keptLine = line(before);
    const rest = keptLine.find(([travel]) => travel === 0)?.[1];
    return {
      kept: keptLine,
      entered: line(now),
      changes: bands.map((band) => {
        const then = keptLine.find(([travel]) => travel === band.travel_mm)?.[1];
        return {
          travel: band.travel_mm,
          value: band[`${name}_change_deg`],
          sd: band[`${name}_change_sd_deg`],
          kept: then === undefined || rest === undefined ? null : then - rest,
          most: band.top[`${name}_change`]?.[0] ?? null,
        };
      }),
    };
  };
  return { toe: angle("toe"), camber: angle("camber") };
};
