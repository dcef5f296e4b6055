/** What the address of a car's page may carry: the car line that was just begun for it. */
export interface CarSearch {
  readonly family?: string;
}

/** Reads the search part of the address of a car's page. */
export const readCarSearch = (search: Record<string, unknown>): CarSearch =>
  typeof search.family === "string" && search.family !== "" ? { family: search.family } : {};
