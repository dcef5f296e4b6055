import type { JetCorner } from "#engines/linkage";
import type { Jet } from "#numeric";

/** What a coordinate is called, by its axis. */
export const AXIS_WORDS = ["fore and aft", "across", "height"] as const;

/** What one coordinate of a hard point has of a figure's variance. */
export interface LargeShare {
  /** Number of the point in the mechanism. */
  readonly point: number;
  readonly axis: 0 | 1 | 2;
  /** 0 to 1. */
  readonly share: number;
  /** Standard deviation of the coordinate, m. */
  readonly sd: number;
  /** Its number among everything uncertain. */
  readonly parameter: number;
}

/** The coordinates with the largest shares of a figure's variance, largest first; none that has no share. */
export const largestShares = (jets: JetCorner, jet: Jet, most: number): readonly LargeShare[] =>
  jets
    .shares(jet)
    .map((share, parameter) => ({ share, parameter }))
    .filter(({ share }) => share > 0)
    .sort((a, b) => b.share - a.share)
    .slice(0, most)
    .flatMap(({ share, parameter }): readonly LargeShare[] => {
      const one = jets.parameters[parameter];
      return one?.kind === "coordinate" ? [{ point: one.point, axis: one.axis, share, sd: one.sd, parameter }] : [];
    });
