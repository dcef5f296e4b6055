/** What of the list of families stands in its address. */
export interface FamiliesSearch {
  /** Id of the car line that was taken off the list last, so that it can be put back at once. */
  readonly off?: string;
}

/** Reads the search part of the address; what is no text is left out. */
export const readFamiliesSearch = ({ off }: Record<string, unknown>): FamiliesSearch =>
  typeof off === "string" && off !== "" ? { off } : {};
