import type { Jet, Vector } from "#numeric";
import type { PointDeviation } from "../jet-corner.ts";

/** An error that several points share because they were measured from one base: they move together by it. */
export interface SharedError {
  /** Names of points, as the mechanism has them ("link.inner", "strut.top", "trailing_arm.bush"). */
  readonly points: readonly string[];
  /** Standard deviation of the shared shift along x, y and z, metres. */
  readonly sd: PointDeviation;
}

/** One source moves each of its coordinates (numbered 3 point + axis) by `sd` per standard deviation. */
interface PointSource {
  readonly coordinates: readonly number[];
  readonly sd: number;
}

/**
 * What is not known of the hard points, as independent sources in units of one standard deviation: every point's own
 * error by coordinate, then each shared one by axis. Their sum gives the points their variances and correlations.
 */
export class PointErrors {
  private readonly sources: readonly PointSource[];

  /** `own` has one entry per name; shared errors may name only points that are among `names`. */
  constructor(
    readonly names: readonly string[],
    own: readonly PointDeviation[],
    shared: readonly SharedError[],
  ) {
    const sources: PointSource[] = [];
    names.forEach((_, point) => {
      for (const axis of [0, 1, 2] as const)
        sources.push({ coordinates: [3 * point + axis], sd: own[point]?.[axis] ?? 0 });
    });
    for (const { points, sd } of shared) {
      const numbers = points.map((name) => names.indexOf(name)).filter((i) => i >= 0);
      for (const axis of [0, 1, 2] as const)
        sources.push({ coordinates: numbers.map((i) => 3 * i + axis), sd: sd[axis] });
    }
    this.sources = sources;
  }

  get count(): number {
    return this.sources.length;
  }

  /** Derivatives of a figure by the sources, from its jet by the coordinates; written from the start of `into`. */
  derivatives(jet: Jet, into: Float64Array): void {
    this.sources.forEach(({ coordinates, sd }, i) => {
      let sum = 0;
      for (const c of coordinates) sum += jet[c + 1] as number;
      into[i] = sum * sd;
    });
  }

  /** How far each point is moved by the sources (in standard deviations), metres, in the order of the names. */
  shifts(sources: ArrayLike<number>): readonly Vector[] {
    const moved = this.names.map((): [number, number, number] => [0, 0, 0]);
    this.sources.forEach(({ coordinates, sd }, i) => {
      for (const c of coordinates) {
        const shift = moved[Math.floor(c / 3)] as [number, number, number];
        shift[c % 3] = (shift[c % 3] as number) + sd * (sources[i] as number);
      }
    });
    return moved;
  }
}
