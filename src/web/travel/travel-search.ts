import type { FirmerRubber } from "#casework";
import type { Corner } from "../car.ts";
import { type ConditionSearch, readConditionSearch } from "../effect/condition-in-address.ts";
import { type EyeSearch, readEyeSearch } from "../geometry/eye-in-address.ts";
import { formatMark, parseMark } from "../underside/marks-in-address.ts";
import { FIRMER_FACTOR } from "../underside/position-mark.ts";
import { type LineSearch, readLineSearch } from "./line-search.ts";

/** What of a sheet over travel stands in its address: the corner, the lines, the figures, the view and the condition. */
export interface TravelSearch extends ConditionSearch, EyeSearch, LineSearch {
  readonly corner?: Corner;
  /** Ids of the positions whose rubber is torn, or firmer; EVERY_RUBBER for all of the corner. */
  readonly torn?: string;
  readonly firmer?: string;
  /** How firm, as a mark says it behind "firmer-": "3", "shore-55-65"; absent: twice. */
  readonly firmer_by?: string;
  /** Id of the car line whose corner stands beside. */
  readonly beside?: string;
}

/** Stands in the place of a position where all rubber of the corner is firmer. */
export const EVERY_RUBBER = "every-rubber";

/** How firm what is firmer is; twice where the address does not say it. */
export const firmerOf = ({ firmer_by }: TravelSearch): FirmerRubber => {
  const mark = firmer_by === undefined ? null : parseMark(`firmer-${firmer_by}`);
  return mark?.kind === "firmer" ? mark : { kind: "firmer", factor: FIRMER_FACTOR.usual };
};

/** The same as it stands in the address. */
export const firmerBy = (firmer: FirmerRubber): string => formatMark(firmer).replace(/^firmer-/, "");

/** What is torn here is torn as far as it is repaired first. */
export const TORN_GRADE = 3;

/** The place this address looks at and what it is looked at as, as a sheet of one place has them in its address. */
export const lookedAtPlace = (search: TravelSearch): { readonly at?: string; readonly as?: string } => {
  const { torn, firmer } = search;
  if (torn !== undefined) return { at: torn, as: formatMark({ kind: "torn", grade: TORN_GRADE }) };
  if (firmer !== undefined && firmer !== EVERY_RUBBER) return { at: firmer, as: formatMark(firmerOf(search)) };
  return {};
};

export const CORNERS: readonly Corner[] = ["front-left", "front-right", "rear-left", "rear-right"];
/** Reads the search part of an address; what cannot be read is left out. */
export const readTravelSearch = (search: Record<string, unknown>): TravelSearch => {
  const corner = CORNERS.find((one) => one === search.corner);
  const by = typeof search.firmer_by === "number" ? String(search.firmer_by) : search.firmer_by;
  const readable = typeof by === "string" && parseMark(`firmer-${by}`)?.kind === "firmer";
  const text = (key: "torn" | "firmer" | "beside") => {
    const value = search[key];
    return typeof value === "string" && value !== "" ? { [key]: value } : {};
  };
  return {
    ...(corner === undefined ? {} : { corner }),
    ...text("torn"),
    ...text("firmer"),
    ...(readable ? { firmer_by: by } : {}),
    ...text("beside"),
    ...readLineSearch(search),
    ...readEyeSearch(search),
    ...readConditionSearch(search),
  };
};
