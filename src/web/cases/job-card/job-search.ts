/** What is selected on the job card, as it stands in the address. */
export interface JobSearch {
  /** Id of a step. */
  readonly step?: string;
}

/** Reads the selection of an address. */
export const readJobSearch = ({ step }: Record<string, unknown>): JobSearch =>
  typeof step === "string" ? { step } : {};
