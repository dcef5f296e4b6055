import { type ConditionSearch, readConditionSearch } from "../effect/condition-in-address.ts";

/** As what a place is looked at. */
export type LookedAtAs = "torn" | "firmer" | "loose";

/** What of the page of a layout from a file stands in its address; the file itself is kept for the session. */
export interface BodiesSearch extends ConditionSearch {
  /** The file that was read in, and not the invented example. */
  readonly own?: true;
  /** "<name>" of a joint or a whole link, or "<link>.<end>". */
  readonly at?: string;
  readonly as?: LookedAtAs;
  readonly play_mm?: number;
  readonly factor_low?: number;
  readonly factor_high?: number;
  /** A firmer part is told by its hardness and not by its rate; of the old part and the new, Shore A. */
  readonly by?: "hardness";
  readonly old_shore_a?: number;
  readonly new_shore_a?: number;
  /** How it is held instead of its curves. */
  readonly show?: "hold";
  /** Key of the way of holding it that is drawn. */
  readonly held?: string;
  readonly turn_deg?: number;
  readonly tilt_deg?: number;
}

const numberWithin = (value: unknown, low: number, high: number): number | null => {
  const number = typeof value === "string" && value.trim() !== "" ? Number(value) : value;
  return typeof number === "number" && number >= low && number <= high ? number : null;
};

/** Within what a play in mm, a factor and the eye in degrees can be asked for. */
export const PLAY_MM = { low: 0.1, high: 10 } as const;
export const FACTOR = { low: 0.05, high: 20 } as const;
/** Any hardness there is; where the relation ends is said at its field. */
const SHORE_A = { low: 0, high: 100 } as const;
const NUMBERS = {
  play_mm: PLAY_MM,
  factor_low: FACTOR,
  factor_high: FACTOR,
  old_shore_a: SHORE_A,
  new_shore_a: SHORE_A,
  turn_deg: { low: -180, high: 180 },
  tilt_deg: { low: -30, high: 90 },
} as const;

const words = (value: unknown): string | null => (typeof value === "string" && value !== "" ? value : null);
const isLookedAtAs = (value: unknown): value is LookedAtAs =>
  value === "torn" || value === "firmer" || value === "loose";

/** Reads the search part of an address; what cannot be read is left out. */
export const readBodiesSearch = (search: Record<string, unknown>): BodiesSearch => {
  const [at, held] = [words(search.at), words(search.held)];
  const numbers = Object.entries(NUMBERS).flatMap(([key, { low, high }]) => {
    const number = numberWithin(search[key], low, high);
    return number === null ? [] : [[key, number] as const];
  });
  return {
    ...(search.own === true || search.own === "true" ? { own: true } : {}),
    ...(at === null ? {} : { at }),
    ...(isLookedAtAs(search.as) ? { as: search.as } : {}),
    ...(search.by === "hardness" ? { by: "hardness" as const } : {}),
    ...(search.show === "hold" ? { show: "hold" as const } : {}),
    ...(held === null ? {} : { held }),
    ...Object.fromEntries(numbers),
    ...readConditionSearch(search),
  };
};
