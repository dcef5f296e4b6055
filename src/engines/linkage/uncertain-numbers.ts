import type { Jet } from "#numeric";

/** One uncertain number of a corner: a coordinate of a hard point, or the common factor of one joint's rates. */
export type Parameter =
  | { readonly kind: "coordinate"; readonly point: number; readonly axis: 0 | 1 | 2; readonly sd: number }
  | { readonly kind: "rate"; readonly name: string; readonly sd: number };

/** Correlations of the points' errors, symmetric, three rows per point of the mechanism; null: none hang together. */
export type PointCorrelations = readonly (readonly number[])[] | null;

/** What is uncertain in a corner, in the order of the derivatives of its figures, and what that makes of a figure. */
export class UncertainNumbers {
  /** Standard deviations of the parameters as they are on file, in their order. */
  readonly deviations: readonly number[];

  constructor(
    readonly parameters: readonly Parameter[],
    /** Of every point of the mechanism, in its order. */
    readonly pointNames: readonly string[],
    private readonly correlation: PointCorrelations = null,
  ) {
    this.deviations = parameters.map(({ sd }) => sd);
  }

  /** Standard deviation of a quantity from everything uncertain. */
  deviation(jet: Jet): number {
    return this.spread(jet, this.deviations);
  }

  /**
   * The same with other deviations of the parameters, and of those only that count: root of the sum of (derivative times
   * deviation) over every pair times its correlation. A coordinate whose deviation is another than on file was read anew, and
   * hangs together with none.
   */
  spread(jet: Jet, deviations: readonly number[], counts: (parameter: number) => boolean = () => true): number {
    const parts = deviations.map((sd, i) => (counts(i) ? (jet[i + 1] as number) * sd : 0));
    let sum = parts.reduce((total, part) => total + part ** 2, 0);
    this.correlation?.forEach((row, i) => {
      if (parts[i] === 0 || deviations[i] !== this.deviations[i]) return;
      for (let j = 0; j < i; j++)
        if (deviations[j] === this.deviations[j])
          sum += 2 * (parts[i] as number) * (parts[j] as number) * (row[j] as number);
    });
    return Math.sqrt(Math.max(0, sum));
  }

  /** Share of each parameter in the variance of a quantity, each taken by itself; all zero where the variance is. */
  shares(jet: Jet): number[] {
    const parts = this.parameters.map((p, i) => ((jet[i + 1] as number) * p.sd) ** 2);
    const total = parts.reduce((a, b) => a + b, 0);
    return parts.map((x) => (total > 0 ? x / total : 0));
  }
}
