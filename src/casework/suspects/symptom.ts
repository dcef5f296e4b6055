/** One complaint as owners bring it, with what is behind it how often. */
export interface Symptom {
  readonly id: string;
  readonly label: string;
  /** Shares add up to 100: of the cars that come with it, so many have this cause. Invented start values, no statistics. */
  readonly causes: readonly (readonly [cause: string, share: number])[];
  /** Tests in a sensible order. */
  readonly tests: readonly string[];
  readonly firstLook: string;
  /** Words of owners that point to it, lower case. */
  readonly words: readonly string[];
}
