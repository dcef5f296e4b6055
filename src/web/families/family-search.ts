/** What of a family sheet stands in its address. */
export interface FamilySearch {
  /** The selected row of the wear calendar: a position without its side. */
  readonly at?: string;
}

/** Reads the search part of an address; what is no text is left out. */
export const readFamilySearch = ({ at }: Record<string, unknown>): FamilySearch =>
  typeof at === "string" && at !== "" ? { at } : {};
