import { type ConditionSearch, readConditionSearch } from "../effect/condition-in-address.ts";

/** What of the page of a layout from a file stands in its address; the file itself is kept for the session. */
export interface BodiesSearch extends ConditionSearch {
  /** The file that was read in, and not the invented example. */
  readonly own?: true;
  /** "<part>" of a joint or "<link>.<end>". */
  readonly torn?: string;
  readonly turn_deg?: number;
  readonly tilt_deg?: number;
}

const numberWithin = (value: unknown, low: number, high: number): number | null => {
  const number = typeof value === "string" && value.trim() !== "" ? Number(value) : value;
  return typeof number === "number" && number >= low && number <= high ? number : null;
};

/** Reads the search part of an address; what cannot be read is left out. */
export const readBodiesSearch = (search: Record<string, unknown>): BodiesSearch => {
  const [turn, tilt] = [numberWithin(search.turn_deg, -180, 180), numberWithin(search.tilt_deg, -30, 90)];
  return {
    ...(search.own === true || search.own === "true" ? { own: true } : {}),
    ...(typeof search.torn === "string" && search.torn !== "" ? { torn: search.torn } : {}),
    ...(turn === null ? {} : { turn_deg: turn }),
    ...(tilt === null ? {} : { tilt_deg: tilt }),
    ...readConditionSearch(search),
  };
};
