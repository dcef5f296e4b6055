/** What of an underside stands in its address: the selected place. */
export interface LooksSearch {
  /** Id of the selected position. */
  readonly at?: string;
}

/** Reads the search part of the address; what is no text is left out. */
export const readLooksSearch = (search: Record<string, unknown>): LooksSearch =>
  typeof search.at === "string" && search.at !== "" ? { at: search.at } : {};
