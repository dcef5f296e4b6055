import type { CholeskyFactor, Jet, Vector } from "#numeric";
import type { PointDeviation } from "../jet-corner.ts";
import type { PointCorrelations } from "../uncertain-numbers.ts";

/** An error that several points share because they were measured from one base: they move together by it. */
export interface SharedError {
  /** Names of points, as the mechanism has them ("link.inner", "strut.top", "trailing_arm.bush"). */
  readonly points: readonly string[];
  /** Standard deviation of the shared shift along x, y and z, metres. */
  readonly sd: PointDeviation;
}

/** One source moves each of its coordinates (numbered 3 point + axis) by so many metres per standard deviation. */
interface PointSource {
  readonly coordinates: readonly number[];
  readonly metres: readonly number[];
}

/**
 * What is not known of the hard points, as independent sources in units of one standard deviation: every point's own
 * error by coordinate, then each shared one by axis. Their sum gives the points their variances and correlations.
 */
export class PointErrors {
  private readonly sources: readonly PointSource[];

  /**
   * `own` has one entry per name; shared errors may name only points that are among `names`. `factor`: lower triangle of the
   * own errors' correlations, L Lᵀ; without it each coordinate has an error of its own.
   */
  constructor(
    readonly names: readonly string[],
    own: readonly PointDeviation[],
    shared: readonly SharedError[],
    factor: CholeskyFactor | null = null,
  ) {
    const sds = names.flatMap((_, point) => [...(own[point] ?? [0, 0, 0])]);
    const sources: PointSource[] = sds.map((sd, j) => {
      if (!factor) return { coordinates: [j], metres: [sd] };
      const coordinates = sds.flatMap((_, i) => (i >= j ? [i] : []));
      return { coordinates, metres: coordinates.map((i) => (sds[i] as number) * (factor[i]?.[j] ?? 0)) };
    });
    for (const { points, sd } of shared) {
      const numbers = points.map((name) => names.indexOf(name)).filter((i) => i >= 0);
      for (const axis of [0, 1, 2] as const)
        sources.push({ coordinates: numbers.map((i) => 3 * i + axis), metres: numbers.map(() => sd[axis]) });
    }
    this.sources = sources;
  }

  get count(): number {
    return this.sources.length;
  }

  /** Derivatives of a figure by the sources, from its jet by the coordinates; written from the start of `into`. */
  derivatives(jet: Jet, into: Float64Array): void {
    this.sources.forEach(({ coordinates, metres }, i) => {
      let sum = 0;
      coordinates.forEach((c, k) => {
        sum += (jet[c + 1] as number) * (metres[k] as number);
      });
      into[i] = sum;
    });
  }

  /** What the sources make of the points: standard deviation of every coordinate, metres, and their correlations. */
  spread(): { readonly deviations: readonly PointDeviation[]; readonly correlations: PointCorrelations } {
    const n = 3 * this.names.length;
    const covariance = Array.from({ length: n }, () => new Float64Array(n));
    for (const { coordinates, metres } of this.sources)
      coordinates.forEach((a, i) => {
        const row = covariance[a] as Float64Array;
        coordinates.forEach((b, j) => {
          row[b] = (row[b] as number) + (metres[i] as number) * (metres[j] as number);
        });
      });
    const sds = covariance.map((row, i) => Math.sqrt(row[i] as number));
    const sd = (i: number): number => sds[i] as number;
    return {
      deviations: this.names.map((_, i): PointDeviation => [sd(3 * i), sd(3 * i + 1), sd(3 * i + 2)]),
      correlations: covariance.map((row, i) =>
        [...row].map((value, j) => (i === j || value === 0 ? Number(i === j) : value / (sd(i) * sd(j)))),
      ),
    };
  }

  /** How far each point is moved by the sources (in standard deviations), metres, in the order of the names. */
  shifts(sources: ArrayLike<number>): readonly Vector[] {
    const moved = this.names.map((): [number, number, number] => [0, 0, 0]);
    this.sources.forEach(({ coordinates, metres }, i) => {
      coordinates.forEach((c, k) => {
        const shift = moved[Math.floor(c / 3)] as [number, number, number];
        shift[c % 3] = (shift[c % 3] as number) + (metres[k] as number) * (sources[i] as number);
      });
    });
    return moved;
  }
}
