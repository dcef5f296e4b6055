import type { Hertz, Metres, MetresPerSecond } from "#quantity";
import type { AxleName, Corner, Rung } from "#vehicle";
import type { EffectPart, Figure } from "./fault-effect.ts";

/** A hydraulic bush that has lost its fluid: pose and load path stay as they were, only the damping is gone. */
export interface FluidGone {
  readonly kind: "fluid-gone";
}

/** What is asked: a hydraulic bush without its fluid, under light braking with an uneven disc. */
export interface ShakeQuestion {
  readonly corner: Corner;
  /** Id of a position with a hydraulic bush, e.g. "front-left/tension-link/inner-bush". */
  readonly position: string;
  /** Thickness variation of the disc, peak to peak; absent: the most a new one may have. */
  readonly variation?: Metres;
  /** Road speed at which the driver feels it, told to the nearest km/h; absent: nobody said. */
  readonly speed?: MetresPerSecond;
}

/** A line with its band (95 %). */
export interface BandedLine {
  readonly values: readonly number[];
  readonly low: readonly number[];
  readonly high: readonly number[];
}

/** Amplitude of the wheel's movement along the road over the road speed, metres. */
export interface ShakeLine extends BandedLine {
  readonly state: "sound" | "leaked";
}

/** What a shaker reads of the bush alone over the frequency: N/m, and radians by which the movement follows the force. */
export interface BushLine {
  readonly state: "sound" | "leaked";
  readonly stiffness: BandedLine;
  readonly lossAngle: BandedLine;
}

/** What a bush does without its fluid. */
export interface Shake {
  readonly question: ShakeQuestion;
  readonly axle: AxleName;
  readonly rung: Rung;
  /** True for a family of demo data: nobody has measured its geometry. */
  readonly invented: boolean;
  /** Every hard point and rate the corner is computed from. */
  readonly parts: readonly EffectPart[];
  readonly speeds: readonly MetresPerSecond[];
  readonly lines: readonly [sound: ShakeLine, leaked: ShakeLine];
  /** The bush alone over these frequencies, and how often the thick place of the disc comes by. */
  readonly bush: {
    readonly frequencies: readonly Hertz[];
    readonly lines: readonly BushLine[];
    /** How often the thick place of the disc comes by at the worst speed. */
    readonly worst: Hertz;
  };
  /** Where the leaked one shakes most; at an end of the speeds it may rise beyond. */
  readonly worst: { readonly speed: MetresPerSecond; readonly atEnd: boolean };
  /** The speed at which the driver feels it; null: nobody said. */
  readonly felt: MetresPerSecond | null;
  /** How many times as far the wheel shakes without the fluid, at the speed where that is most. */
  readonly headline: Figure;
  readonly figures: readonly Figure[];
  readonly sentence: string;
  /** Why neither an eye nor a lever finds it. */
  readonly hidden: string;
  /** What a shaker reads of the bush itself, sound and leaked. */
  readonly bushAlone: string;
  readonly judgedAgainst: string;
  readonly howSure: string;
  readonly whatElse: string;
  readonly computedSo: string;
  readonly cautions: readonly string[];
}
