import type { Metres, Newtons, Radians, Share } from "#quantity";
import type { AxleName, Corner, Rung } from "#vehicle";

/** What one wheel stands in: loads at this wheel and where body and rack are. */
export interface Condition {
  /** How far the contact patch is held above its ride height (bump positive). */
  readonly contactRise: Metres;
  readonly rack: Metres;
  /** Rearward at the contact patch. */
  readonly braking: Newtons;
  /** Toward the left at the contact patch. */
  readonly lateral: Newtons;
  /** Forward at the wheel centre. */
  readonly drive: Newtons;
}

/** What is wrong (or different) at one rubber position. */
export type RubberFault =
  | { readonly kind: "torn"; readonly grade: 1 | 2 | 3 }
  /** `assumed`: nobody has measured this play; whatever is computed from it says so. */
  | { readonly kind: "loose"; readonly play: Metres; readonly assumed?: true }
  | FirmerRubber;

/** A firmer part fitted: by how many times its rates are the sound one's, or by the hardness of both. */
export type FirmerRubber =
  | { readonly kind: "firmer"; readonly factor: number }
  | { readonly kind: "firmer"; readonly hardness: HardnessChange };

/** Hardness of a rubber part and of the one in its place, Shore A; null: nobody has said it. */
export interface HardnessChange {
  /** null: the one the family sheet holds counts, where it holds one. */
  readonly from: number | null;
  readonly to: number | null;
}

/** How many times the rates of a firmer part are the sound one's, as far as that follows from hardness. */
export interface Firmness {
  readonly from: number;
  readonly to: number;
  readonly factor: number;
  /** Where the factor lies with 95 %. */
  readonly low: number;
  readonly high: number;
  /** Where the hardness of the old part is from, in words. */
  readonly origin: string;
}

export interface FaultQuestion {
  readonly corner: Corner;
  /** Id of a position whose joint is not null, e.g. "rear-left/trailing-link/inner-bush". */
  readonly position: string;
  readonly fault: RubberFault;
  readonly condition: Condition;
}

/** A figure that opens: value, how sure, on which rung, from what, by what relation, from which source. */
export interface Figure {
  readonly key: string;
  readonly label: string;
  readonly value: number;
  readonly unit: "deg" | "mm" | "N" | "deg per m" | "percent" | "times" | "km/h" | "Hz";
  /** Most decimals it is shown with; absent: those of its unit. */
  readonly decimals?: number;
  /** Standard uncertainty of the value with the fault at the middle of its range, in the same unit. */
  readonly u: number;
  /** Values at the lower and upper end of the fault where it is a range (torn share), nothing else uncertain. */
  readonly range: readonly [low: number, high: number] | null;
  /** Where the figure lies with 95 %, the range of the fault and every uncertain input in it; null: not computed. */
  readonly band: readonly [low: number, high: number] | null;
  readonly rung: Rung;
  readonly inputs: readonly { readonly label: string; readonly value: string }[];
  readonly relation: string;
  readonly source: string;
  /** False: the sign is not 97.5 % sure; the figure is not printed, `settle` is. */
  readonly signSure: boolean;
  readonly settle: string | null;
}

/** A hard point or a rate the computation stands on, in words: what it is, its figures, how it is known. */
export interface EffectPart {
  readonly kind: "point" | "rate";
  readonly label: string;
  readonly value: string;
  /** Standard deviation and origin. */
  readonly known: string;
}

/** One pose of the wheel, with its joints, for the drawing. All in the vehicle frame of the asked corner. */
export interface WheelPose {
  readonly toe: Radians;
  readonly camber: Radians;
  readonly spin: Radians;
  readonly centre: readonly [Metres, Metres, Metres];
  readonly contact: readonly [Metres, Metres, Metres];
  /** Row-major rotation of the knuckle from its design attitude. */
  readonly rotation: readonly number[];
  /**
   * Of a linkage of several bodies, by name: how far the place of the wheel centre at design has gone with each, and its
   * rotation. Absent: there is the knuckle alone.
   */
  readonly bodies?: Readonly<
    Record<string, { readonly shift: readonly [Metres, Metres, Metres]; readonly rotation: readonly number[] }>
  >;
}

/** One line of a curve: a value per entry of `rises`, with the band inside which it lies (95 %, torn share included). */
export interface CurveLine {
  readonly state: "sound" | RubberFault["kind"];
  readonly values: readonly number[];
  readonly low: readonly number[];
  readonly high: readonly number[];
}

/** "toe-change" and "camber-change": faulty less sound, known better than either where hard points are uncertain. */
export type CurveQuantity = "toe" | "camber" | "toe-change" | "camber-change";

export interface Curve {
  readonly quantity: CurveQuantity;
  readonly unit: "deg";
  /** False: its sign is not certain; the curve is not drawn, `settle` says which reading would settle it. */
  readonly drawable: boolean;
  readonly settle: string | null;
  readonly lines: readonly CurveLine[];
}

export interface FaultEffect {
  readonly question: FaultQuestion;
  readonly axle: AxleName;
  readonly rung: Rung;
  /** True where the car line is made up: what is said to be measured is made up to that tolerance. */
  readonly invented: boolean;
  /** Every hard point and every rate the figures come from, on the asked side. */
  readonly parts: readonly EffectPart[];
  readonly sound: WheelPose;
  readonly faulty: WheelPose;
  /** The fault in a few words: "torn", "firmer, 55 to 65 Shore A". */
  readonly inWords: string;
  readonly tornShare: { readonly low: Share; readonly high: Share; readonly origin: string } | null;
  /** Of a firmer part told by its hardness; null of every other. */
  readonly firmness: Firmness | null;
  /** Contact rises of the curves, metres, rising. */
  readonly rises: readonly number[];
  readonly curves: readonly Curve[];
  /** The figure the page is about: how much further the wheel turns than on a sound bush, at the stated force. */
  readonly headline: Figure;
  readonly figures: readonly Figure[];
  /** Plain words, one or two sentences. */
  readonly sentence: string;
  /** What it is judged against, and whose limit (usually: none is published). */
  readonly judgedAgainst: string;
  readonly howSure: string;
  /** The readings that would narrow the headline most, and to what; null where there is no figure or none would help. */
  readonly narrows: string | null;
  readonly whatElse: string;
  readonly computedSo: string;
  /** Said where the force asked for is more than a tyre could pass on at this wheel; null where it is not. */
  readonly beyondTyre: string | null;
  /** Other equilibria of a loose joint, said and not hidden. */
  readonly others: readonly WheelPose[];
  /** The sound corner at the lowest and highest point of the curves: thin outlines in the drawing. */
  readonly travels: readonly WheelPose[];
  readonly cautions: readonly string[];
}
