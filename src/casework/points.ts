import type { Figure } from "./fault-effect.ts";

/** A coordinate of a hard point and what it does to one figure. */
export interface RankedCoordinate {
  /** Name of the point in the family: "toe-link.inner", "strut.top". */
  readonly point: string;
  readonly axis: 0 | 1 | 2;
  /** "height" */
  readonly axisWords: string;
  /** Of the figure's variance, 0 to 1. */
  readonly share: number;
  /** Change of the figure, in its unit, for a millimetre of the coordinate. */
  readonly perMm: number;
}

/** A figure of a corner with the coordinates that decide how sure it is. */
export interface RankedFigure {
  readonly key: string;
  readonly label: string;
  readonly unit: Figure["unit"];
  /** Wheel-centre travel it is said at, mm, bump positive. */
  readonly travel: number;
  readonly value: number;
  /** Standard deviation, in its unit. */
  readonly sd: number;
  /** Its sign is 97.5 % sure, so that it can be printed. */
  readonly printable: boolean;
  /** What would settle it where it is not printable. */
  readonly settle: string | null;
  /** Largest share of the variance first. */
  readonly coordinates: readonly RankedCoordinate[];
}
