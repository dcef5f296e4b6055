import { type CarMotion, carMotions } from "#casework";

/** What of the whole car stands in its address. */
export interface WholeCarSearch {
  readonly motion?: CarMotion["kind"];
  /** As the page shows it: mm or degrees. */
  readonly by?: number;
}

/** Reads the search part of an address; what cannot be read is left out. */
export const readWholeCarSearch = (search: Record<string, unknown>): WholeCarSearch => {
  const motion = carMotions.find(({ kind }) => kind === search.motion)?.kind;
  const by = typeof search.by === "string" && search.by.trim() !== "" ? Number(search.by) : search.by;
  return {
    ...(motion === undefined ? {} : { motion }),
    ...(typeof by === "number" && Number.isFinite(by) ? { by } : {}),
  };
};
