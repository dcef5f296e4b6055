/** What of the reference sheet stands in its address. */
export interface ReferenceSearch {
  /** Key of the source that is opened. */
  readonly source?: string;
}

/** Reads the search part of an address; what is no text is left out. */
export const readReferenceSearch = ({ source }: Record<string, unknown>): ReferenceSearch =>
  typeof source === "string" && source !== "" ? { source } : {};
