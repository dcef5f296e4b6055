import { type WheelPlace, wheelPlaces } from "#engines/linkage";
import type { Figure } from "../fault-effect.ts";

/** One figure of all four wheels beside each other; null: there is none of that wheel. */
export interface CornerRow {
  readonly label: string;
  readonly cells: Readonly<Record<WheelPlace, Figure | null>>;
}

/** Row of the table by the end of its figures' keys, which begin with the place of their wheel. */
const TURN = "turn";
const ROWS: readonly { readonly end: string; readonly label: string }[] = [
  { end: "load", label: "load" },
  { end: TURN, label: "turns by the rack" },
  { end: "travel", label: "travel against the body, bump" },
  { end: "camber", label: "camber against the ground, from standing" },
  { end: "toe", label: "toe by the linkage, from standing" },
  { end: "give", label: "toe by the joints' give" },
];

const isLeft: Readonly<Record<WheelPlace, WheelPlace>> = {
  frontLeft: "frontLeft",
  frontRight: "frontLeft",
  rearLeft: "rearLeft",
  rearRight: "rearLeft",
};

/** What is special of a motion: the right wheels do what the left ones do; which figure is the turn of a steered wheel. */
interface Special {
  readonly alike?: boolean;
  readonly turns?: Partial<Record<WheelPlace, string>>;
}

/** The figures of the wheels as a table. */
export function cornerRows(
  figures: readonly Figure[],
  { alike = false, turns = {} }: Special = {},
): readonly CornerRow[] {
  return ROWS.flatMap(({ end, label }) => {
    const keyOf = (place: WheelPlace): string | undefined =>
      end === TURN ? turns[place] : cornerKey(alike ? isLeft[place] : place, end);
    const cellOf = (place: WheelPlace): Figure | null => figures.find(({ key }) => key === keyOf(place)) ?? null;
    const cells = {
      frontLeft: cellOf("frontLeft"),
      frontRight: cellOf("frontRight"),
      rearLeft: cellOf("rearLeft"),
      rearRight: cellOf("rearRight"),
    };
    return wheelPlaces.every((place) => cells[place] === null) ? [] : [{ label, cells }];
  });
}

/** Key of a figure of one wheel that stands in the table. */
export const cornerKey = (place: WheelPlace, end: string): string => `${place}-${end}`;
