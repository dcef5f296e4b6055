/** A probability that outcomes teach, as the cases it is worth: so many in which it was so, so many in which not. */
export interface Belief {
  readonly yes: number;
  readonly no: number;
}

/** A guess that is worth so many cases (both above nought). */
export const guess = (probability: number, worth: number): Belief => ({
  yes: probability * worth,
  no: (1 - probability) * worth,
});

/** The belief after so many more outcomes of either kind (Beta distribution, from memory). */
export const teach = (belief: Belief, yes: number, no: number): Belief => ({
  yes: belief.yes + yes,
  no: belief.no + no,
});

/** The chance that it is so the next time. */
export const chanceOf = ({ yes, no }: Belief): number => yes / (yes + no);

/** Standard uncertainty of the underlying share. */
export const uncertaintyOf = ({ yes, no }: Belief): number =>
  Math.sqrt((yes * no) / ((yes + no) ** 2 * (yes + no + 1)));

/** A probability whose odds are multiplied by a factor (not negative): how a known fault of a family shifts a prior. */
export function shiftOdds(probability: number, factor: number): number {
  const yes = probability * factor;
  return yes + (1 - probability) === 0 ? probability : yes / (yes + 1 - probability);
}

/** What a family knows of one cause. */
export interface KnownFaultRecord {
  /** Factor on the odds of this cause for the cars in its scope. */
  readonly priorFactor: number;
  /** Cases closed here in which it was looked for: found, and not found. */
  readonly confirmed: number;
  readonly denied: number;
}

/** Cases a seeded prior is worth against own counts (invented). */
export const USUAL_WORTH = 20;

/** Prior of a cause on a car of a family: the seed, shifted by each known fault and taught by its outcomes. */
export function computeFamilyPrior(
  seed: number,
  faults: readonly KnownFaultRecord[],
  worth: number = USUAL_WORTH,
): number {
  const shifted = faults.reduce((p, fault) => shiftOdds(p, fault.priorFactor), seed);
  const taught = faults.reduce((belief, f) => teach(belief, f.confirmed, f.denied), guess(shifted, worth));
  return chanceOf(taught);
}

/**
 * Shares of causes of one symptom after closed cases: the seed counts as `worth` cases (Dirichlet, from memory).
 * Shares and counts by the same keys; shares add up to one.
 */
export function teachShares(
  seed: ReadonlyMap<string, number>,
  counts: ReadonlyMap<string, number>,
  worth: number = USUAL_WORTH,
): ReadonlyMap<string, number> {
  const cases = [...seed.keys()].reduce((sum, key) => sum + (counts.get(key) ?? 0), 0);
  return new Map([...seed].map(([key, share]) => [key, (share * worth + (counts.get(key) ?? 0)) / (worth + cases)]));
}
