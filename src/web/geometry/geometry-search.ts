import { readShakeSearch, type ShakeSearch } from "../shake/shake-search.ts";
import { readUndersideSearch, type UndersideSearch } from "../underside/underside-search.ts";

/** What of a geometry sheet stands in its address: the marks of the underside, the place, the condition, and the view. */
export interface GeometrySearch extends UndersideSearch, ShakeSearch {
  /** What the place is looked at as, as formatMark writes it; absent: as it is marked. The mark itself stays as it is. */
  readonly as?: string;
}

/** Reads the search part of an address; what cannot be read is left out. */
export const readGeometrySearch = (search: Record<string, unknown>): GeometrySearch => ({
  ...readUndersideSearch(search),
  ...(typeof search.as === "string" && search.as !== "" ? { as: search.as } : {}),
  ...readShakeSearch(search),
});
