/** What is selected on the plan, as it stands in the address. */
export interface PlanSearch {
  /** Id of a remedy. */
  readonly remedy?: string;
}

/** Reads the selection of an address. */
export const readPlanSearch = ({ remedy }: Record<string, unknown>): PlanSearch =>
  typeof remedy === "string" ? { remedy } : {};
