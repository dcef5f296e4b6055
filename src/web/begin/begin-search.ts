/** Where a car line that is begun belongs. */
export interface BeginSearch {
  /** Id of the visit whose car it is begun for; the way leads back there. */
  readonly visit?: string;
}

/** Reads the search part of the address; what is no text is left out. */
export const readBeginSearch = (search: Record<string, unknown>): BeginSearch =>
  typeof search.visit === "string" && search.visit !== "" ? { visit: search.visit } : {};
