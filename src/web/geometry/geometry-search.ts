import type { Corner } from "../car.ts";
import { readShakeSearch, type ShakeSearch } from "../shake/shake-search.ts";
import { type LineSearch, readLineSearch } from "../travel/line-search.ts";
import { CORNERS } from "../travel/travel-search.ts";
import { readUndersideSearch, type UndersideSearch } from "../underside/underside-search.ts";
import { type EyeSearch, readEyeSearch } from "./eye-in-address.ts";

/** What of a geometry sheet stands in its address: the marks of the underside, the place, the condition, and the view. */
export interface GeometrySearch extends UndersideSearch, ShakeSearch, EyeSearch, LineSearch {
  /** Which corner is drawn sound while no place is looked at. */
  readonly corner?: Corner;
  /** What the place is looked at as, as formatMark writes it; absent: as it is marked. The mark itself stays as it is. */
  readonly as?: string;
  /** What the same place is drawn as besides, as formatMark writes it, "~" between them. */
  readonly also?: string;
}

const readCorner = (value: unknown): Pick<GeometrySearch, "corner"> => {
  const corner = CORNERS.find((one) => one === value);
  return corner === undefined ? {} : { corner };
};

/** Reads the search part of an address; what cannot be read is left out. */
export const readGeometrySearch = (search: Record<string, unknown>): GeometrySearch => ({
  ...readUndersideSearch(search),
  ...readEyeSearch(search),
  ...readCorner(search.corner),
  ...(typeof search.as === "string" && search.as !== "" ? { as: search.as } : {}),
  ...(typeof search.also === "string" && search.also !== "" ? { also: search.also } : {}),
  ...readLineSearch(search),
  ...readShakeSearch(search),
});
