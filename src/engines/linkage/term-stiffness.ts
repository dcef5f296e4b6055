import type { TermState } from "./elastic-term.ts";

/** Adds a member's stiffness rate row row' + force turning to the matrix and takes its force off the right-hand side. */
export function addTerm(
  a: Float64Array,
  n: number,
  b: Float64Array,
  { row, turning }: TermState,
  force: number,
  rate: number,
): void {
  for (let i = 0; i < 6; i++) {
    const gi = row[i] as number;
    const stretch = rate * gi;
    const o = i * n;
    b[i] = (b[i] as number) - force * gi;
    for (let j = 0; j < 6; j++)
      a[o + j] = (a[o + j] as number) + (stretch * (row[j] as number) + force * (turning[6 * i + j] as number));
  }
}
