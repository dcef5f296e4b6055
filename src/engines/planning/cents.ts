/** Money as a whole number of cents, so that sums are exact. */
export type Cents = number;

/**
 * Rounds an amount of money to whole cents, halves away from zero. Prices times factors are decimals and exact halves
 * occur (0.9357 x 150 = 140.355); a millionth of a cent puts the halves that binary numbers place a hair too low on
 * the right side.
 */
export function roundToCents(amount: number): Cents {
  const cents = Math.floor(Math.abs(amount) * 100 + 0.5 + 1e-6);
  return cents === 0 ? 0 : Math.sign(amount) * cents;
}

/** Whole cents as an amount of money. */
export const amountOf = (cents: Cents): number => cents / 100;

/**
 * Splits whole cents in proportion to weights (none negative), by largest remainder; the shares re-add to the whole
 * exactly. Equal remainders go to the earlier entry; weights that are all zero count as equal.
 */
export function splitCents(whole: Cents, weights: readonly number[]): Cents[] {
  if (weights.length === 0) return [];
  const total = weights.reduce((sum, w) => sum + w, 0);
  const exact = weights.map((w) => (Math.abs(whole) * (total > 0 ? w : 1)) / (total > 0 ? total : weights.length));
  const shares = exact.map(Math.floor);
  let left = Math.abs(whole) - shares.reduce((sum, s) => sum + s, 0);
  const order = exact.map((e, i) => ({ i, rest: e - Math.floor(e) })).sort((a, b) => b.rest - a.rest || a.i - b.i);
  for (const { i } of order) {
    if (left <= 0) break;
    shares[i] = (shares[i] as number) + 1;
    left -= 1;
  }
  return whole < 0 ? shares.map((s) => (s === 0 ? 0 : -s)) : shares;
}
