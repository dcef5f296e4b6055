import type { Metres, Radians } from "#quantity";
import type { Corner, Family, PointCorrelation, Rung } from "#vehicle";
import type { EffectPart, Figure } from "./fault-effect.ts";
import type { TravelPlot } from "./travel/travel-sheet.ts";

/** Camber and toe of one wheel with the body at one height; at least one of the two. */
export interface HeightReading {
  /** Wheel-centre travel from ride height, bump positive. */
  readonly travel: Metres;
  readonly camber: Radians | null;
  readonly toe: Radians | null;
}

/** Distance of the joint centres of a link, measured on the bench. */
export interface BenchLength {
  /** Name of the link in the family. */
  readonly link: string;
  readonly length: Metres;
}

/** A corner of a car line with what was read of one car. Uncertainties are standard ones. */
export interface MatchAsked {
  readonly family: Family;
  readonly corner: Corner;
  readonly readings: readonly HeightReading[];
  readonly lengths: readonly BenchLength[];
  readonly u: {
    readonly travel: Metres;
    readonly camber: Radians;
    readonly toe: Radians;
    readonly length: Metres;
    /** Of the height all others are counted from: one error common to them all; 0 where there is none. */
    readonly heightBase: Metres;
    /** Of the place on the body its points on file were measured from: a part of their deviations; 0 where there is none. */
    readonly bodyBase: Metres;
  };
}

/** One figure before and after the readings. */
export interface MatchedFigure {
  readonly before: Figure;
  readonly after: Figure;
  /** The coordinates that matter most to it, largest share of its variance before the readings first. */
  readonly owedTo: readonly CoordinateShare[];
}

/** What one coordinate does to a figure, and how well it is known before and after. */
export interface CoordinateShare {
  /** "the toe link's outer joint, height" */
  readonly words: string;
  /** Of the figure's variance before the readings, 0 to 1. */
  readonly share: number;
  readonly sdBefore: Metres;
  readonly sdAfter: Metres;
}

/** One reading beside what the matched corner says of it. */
export interface ReadingBeside {
  readonly words: string;
  readonly observed: string;
  readonly fitted: string;
  /** Standard deviations it stands from what all others say; beyond 3 it contradicts them. */
  readonly contradiction: number;
}

/** A corner matched to its readings. */
export interface CornerMatch {
  readonly corner: Corner;
  readonly rung: Rung;
  readonly invented: boolean;
  readonly parts: readonly EffectPart[];
  /** Change of toe and of camber over travel, before and matched, with the readings. */
  readonly plots: readonly TravelPlot[];
  readonly figures: readonly MatchedFigure[];
  readonly readings: readonly ReadingBeside[];
  readonly sentence: string;
  /** What the readings leave open, in plain words. */
  readonly undetermined: string;
  /** Readings that contradict the others; null where none does. */
  readonly contradicting: string | null;
  readonly howSure: string;
  readonly computedSo: string;
  /** Shifts and deviations of the hard points by the assembly's names, left side, metres. */
  readonly points: readonly MatchedPoint[];
  /** How their errors hang together now. */
  readonly correlation: PointCorrelation;
}

export interface MatchedPoint {
  readonly name: string;
  readonly at: readonly [Metres, Metres, Metres];
  readonly sd: readonly [Metres, Metres, Metres];
}
