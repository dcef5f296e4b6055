import { readUndersideSearch, type UndersideSearch } from "../underside/underside-search.ts";

/** What of a geometry sheet stands in its address: the marks of the underside, the place, the condition, and the view. */
export interface GeometrySearch extends UndersideSearch {
  /** What the place is looked at as, as formatMark writes it; absent: as it is marked. The mark itself stays as it is. */
  readonly as?: string;
  /** Thickness variation of the disc under a bush without its fluid; absent: the most a new disc may have. */
  readonly variation_mm?: number;
}

/** What a disc may vary in thickness on the page, mm: from a good new one to one that shakes any car (invented). */
export const VARIATION_MM = { low: 0.005, high: 0.1, step: 0.005, usual: 0.015 } as const;

const variationIn = (value: unknown): number | null => {
  const mm = typeof value === "string" && value.trim() !== "" ? Number(value) : value;
  return typeof mm === "number" && mm >= VARIATION_MM.low && mm <= VARIATION_MM.high ? mm : null;
};

/** Reads the search part of an address; what cannot be read is left out. */
export const readGeometrySearch = (search: Record<string, unknown>): GeometrySearch => {
  const variation = variationIn(search.variation_mm);
  return {
    ...readUndersideSearch(search),
    ...(typeof search.as === "string" && search.as !== "" ? { as: search.as } : {}),
    ...(variation === null ? {} : { variation_mm: variation }),
  };
};
