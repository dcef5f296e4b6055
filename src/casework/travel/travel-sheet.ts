import type { Metres } from "#quantity";
import type { Corner, Family, Rung } from "#vehicle";
import type { Condition, CurveLine, FirmerRubber, RubberFault, WheelPose } from "../fault-effect.ts";

/** A figure of a wheel that is followed over its travel. */
export type TravelFigure =
  | "toe"
  | "camber"
  | "wheelbase"
  | "track"
  | "caster"
  | "trail"
  | "scrub"
  | "roll-centre"
  | "spring-ratio";

/** One state that is drawn as a line. */
export type TravelSubject =
  | { readonly kind: "sound" }
  | { readonly kind: "rubber"; readonly position: string; readonly fault: RubberFault }
  /** Every rubber of the corner firmer by one amount; ball joints stay as they are. */
  | { readonly kind: "every-rubber"; readonly fault: FirmerRubber }
  /** The sound corner with the body nearer to the ground; travel counts from there. */
  | { readonly kind: "lowered"; readonly by: Metres }
  /** The sound corner of another car line. */
  | { readonly kind: "beside"; readonly family: Family };

export interface TravelSheetQuestion {
  readonly family: Family;
  readonly corner: Corner;
  /** Forces and rack hold for every line; the travel says where the wheel is drawn. */
  readonly condition: Condition;
  /** One to four. */
  readonly subjects: readonly TravelSubject[];
  readonly figures: readonly TravelFigure[];
}

/** A figure of one subject over travel. */
export interface TravelLine extends CurveLine {
  readonly words: string;
  /** Fewer words for the drawing; absent: `words`. */
  readonly drawnAs?: string;
  readonly subject: TravelSubject["kind"];
  /** Travel of each value from the subject's own ride height, metres, rising. */
  readonly rises: readonly number[];
}

export interface TravelPlot {
  /** Load and lean are those of a whole car. */
  readonly figure: TravelFigure | "load" | "lean";
  readonly title: string;
  readonly unit: "deg" | "mm" | "kN" | "";
  readonly lines: readonly TravelLine[];
  /** What cannot be drawn here and why; empty where nothing is left out. */
  readonly leftOut: readonly string[];
  /** Values that were read, drawn as rings; absent: none. */
  readonly dots?: readonly { readonly rise: Metres; readonly value: number }[];
}

/** How far an angle goes from ride height to one travel, degrees, with its 95 % band. */
export interface TravelChange {
  readonly travel: Metres;
  readonly value: number;
  readonly band: readonly [low: number, high: number];
  /** False: its sign is not 97.5 % sure, so the value is not printed. */
  readonly sure: boolean;
}

/** Toe and camber of a whole corner, each change counted from its ride height. */
export interface TravelRow {
  readonly words: string;
  readonly subject: TravelSubject["kind"];
  readonly rung: Rung;
  /** The car line is made up. */
  readonly invented: boolean;
  readonly toe: readonly TravelChange[];
  readonly camber: readonly TravelChange[];
  /** The same changes at the travel asked for; null at ride height, at one of the others, or beyond the stops. */
  readonly asked: { readonly toe: TravelChange; readonly camber: TravelChange } | null;
  /** Where its links lock and where its stops end the travel, in words. */
  readonly binds: string;
}

/** What a torn, loose or firmer place does: each change against the sound corner at the same height, force and rack. */
export interface RubberRow {
  readonly words: string;
  readonly state: RubberFault["kind"];
  /** What torn, loose or firmer means here, in words; null where nothing is on file. */
  readonly means: string | null;
  readonly toe: readonly TravelChange[];
  readonly camber: readonly TravelChange[];
}

export interface TravelSheet {
  readonly plots: readonly TravelPlot[];
  readonly rows: readonly TravelRow[];
  readonly rubber: readonly RubberRow[];
  /** How the wheel stands at the asked travel, by line; null where that lies beyond its stops. */
  readonly poses: readonly (WheelPose | null)[];
  /** What the lines say in plain words: each row, each rubber row, then the verdicts. */
  readonly sentences: readonly string[];
  /** The sentences that set another car line against this one. */
  readonly verdicts: readonly string[];
  /** What between the two is too close to call, and the readings that would settle it. */
  readonly open: readonly { readonly asked: string; readonly settle: string }[];
}
