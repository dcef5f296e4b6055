const TAIL = 0.025;

/** What lies between its 2.5 % and 97.5 % quantiles over all draws, and how it scatters. */
export interface Spread {
  readonly low: number;
  readonly high: number;
  readonly sd: number;
}

/** Quantile of rising numbers, linear between neighbours. */
function quantile(rising: Float64Array, p: number): number {
  const at = p * (rising.length - 1);
  const below = Math.floor(at);
  const low = rising[below] as number;
  return low + (at - below) * ((rising[below + 1] ?? low) - low);
}

/** The spread of drawn values; there must be two of them at least. */
export function spreadOf(values: readonly number[]): Spread {
  const rising = Float64Array.from(values).sort();
  const mean = values.reduce((sum, x) => sum + x, 0) / values.length;
  const square = values.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (values.length - 1);
  return { low: quantile(rising, TAIL), high: quantile(rising, 1 - TAIL), sd: Math.sqrt(square) };
}
