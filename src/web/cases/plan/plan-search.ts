/** What is selected on the plan, as it stands in the address; a remedy, the sum of a visit, or the visits themselves. */
export interface PlanSearch {
  /** Id of a remedy. */
  readonly remedy?: string;
  /** True where the price of the remedy stands open. */
  readonly price?: true;
  /** Index of a visit whose sum is opened. */
  readonly sum?: number;
  /** True where the visits are being changed. */
  readonly visits?: true;
}

const isTrue = (value: unknown): boolean => String(value) === "true";

/** Reads the selection of an address. */
export const readPlanSearch = ({ remedy, price, sum, visits }: Record<string, unknown>): PlanSearch => {
  if (typeof remedy === "string") return isTrue(price) ? { remedy, price: true } : { remedy };
  if (/^\d{1,3}$/.test(String(sum))) return { sum: Number(sum) };
  return isTrue(visits) ? { visits: true } : {};
};
