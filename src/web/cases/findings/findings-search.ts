/** What is selected on the sheet of findings, as it stands in the address. */
export interface FindingsSearch {
  /** Id of a place. */
  readonly at?: string;
  /** Id of a cause. */
  readonly suspect?: string;
  /** Every cause has a row of its own. */
  readonly all?: true;
}

/** Reads the selection of an address; a cause stands before a place. */
export const readFindingsSearch = ({ at, suspect, all }: Record<string, unknown>): FindingsSearch => ({
  ...(typeof suspect === "string" ? { suspect } : typeof at === "string" ? { at } : {}),
  ...(all === true || all === "true" ? { all: true } : {}),
});
