/** Where a car line that is begun belongs, or which one is put right. */
export interface BeginSearch {
  /** Id of the visit whose car it is begun for; the way leads back there. */
  readonly visit?: string;
  /** Id of a car line whose entries are to be corrected. */
  readonly correct?: string;
}

const textOf = (value: unknown): string | null => (typeof value === "string" && value !== "" ? value : null);

/** Reads the search part of the address; what is no text is left out. */
export const readBeginSearch = (search: Record<string, unknown>): BeginSearch => {
  const [visit, correct] = [textOf(search.visit), textOf(search.correct)];
  return { ...(visit !== null && { visit }), ...(correct !== null && { correct }) };
};
