/** One thing that is wrong with what came from outside: where, what came, what was needed, what to try. */
export interface Finding {
  /** Stable, lower-case words with hyphens; every code stands in docs/codes.md. */
  readonly code: string;
  /** Dots and [i]: links[2].inner_mm[0]; the innermost thing that is wrong; "" for the whole. */
  readonly path: string;
  readonly got: string;
  readonly needed: string;
  readonly hint: string;
}
