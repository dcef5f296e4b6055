/** Coefficients of a real polynomial, the constant first. */
export type Polynomial = readonly number[];

/** Value at t (Horner's rule); nought for no coefficients. */
export function evaluatePolynomial(p: Polynomial, t: number): number {
  let value = 0;
  for (let i = p.length - 1; i >= 0; i--) value = value * t + (p[i] as number);
  return value;
}

/** Sum of any number of polynomials. */
export function addPolynomials(...terms: readonly Polynomial[]): Polynomial {
  const length = Math.max(0, ...terms.map((p) => p.length));
  return Array.from({ length }, (_, i) => terms.reduce((sum, p) => sum + (p[i] ?? 0), 0));
}

/** A polynomial times a number. */
export const scalePolynomial = (p: Polynomial, factor: number): Polynomial => p.map((c) => c * factor);

/** Product of two polynomials. */
export function multiplyPolynomials(p: Polynomial, q: Polynomial): Polynomial {
  const product = new Array<number>(Math.max(0, p.length + q.length - 1)).fill(0);
  p.forEach((a, i) => {
    q.forEach((b, j) => {
      product[i + j] = (product[i + j] as number) + a * b;
    });
  });
  return product;
}

/** Derivative; no coefficients for a constant. */
export const differentiatePolynomial = (p: Polynomial): Polynomial => p.slice(1).map((c, i) => c * (i + 1));

/** Where a monotonic stretch changes its sign, to the last bit that halving can tell. */
function bisect(p: Polynomial, from: number, to: number): number {
  let low = from;
  let high = to;
  const lowSign = Math.sign(evaluatePolynomial(p, low));
  for (;;) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) return middle;
    const sign = Math.sign(evaluatePolynomial(p, middle));
    if (sign === 0) return middle;
    if (sign === lowSign) low = middle;
    else high = middle;
  }
}

/**
 * Every place in the closed range where a polynomial changes its sign (and ends where it is nought), rising. Between two
 * neighbouring such places of its derivative it is monotonic, so that none is missed; a place where it only touches
 * nought may be left out. All finite; low < high.
 */
export function findSignChanges(p: Polynomial, low: number, high: number): readonly number[] {
  if (p.length < 2) return [];
  const inner = findSignChanges(differentiatePolynomial(p), low, high);
  const ends = [low, ...inner.filter((t) => t > low && t < high), high];
  const found: number[] = [];
  for (let i = 0; i + 1 < ends.length; i++) {
    const from = ends[i] as number;
    const to = ends[i + 1] as number;
    const before = Math.sign(evaluatePolynomial(p, from));
    const after = Math.sign(evaluatePolynomial(p, to));
    if (before === 0) found.push(from);
    if (before * after < 0) found.push(bisect(p, from, to));
    if (after === 0 && i + 2 === ends.length) found.push(to);
  }
  return found;
}
