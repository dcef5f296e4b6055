import type { Metres, Radians } from "#quantity";
import type { Family, Rung } from "#vehicle";
import type { CornerRow } from "./car/corner-rows.ts";
import type { Figure, RubberFault } from "./fault-effect.ts";
import type { TravelPlot } from "./travel/travel-sheet.ts";

/** One way the whole car is moved: the body up and down, leaning, nodding, or the rack. */
export type CarMotion =
  /** Body up, metres. */
  | { readonly kind: "heave"; readonly by: Metres }
  /** Left side up: the body leans to the right. */
  | { readonly kind: "roll"; readonly by: Radians }
  /** Nose down. */
  | { readonly kind: "pitch"; readonly by: Radians }
  /** Rack toward the left. */
  | { readonly kind: "rack"; readonly by: Metres }
  /** The car drives: its mass accelerated toward the left as in a bend to the left, and forward (braked: negative), m/s2. */
  | { readonly kind: "bend"; readonly by: number; readonly along: number };

export interface CarQuestion {
  readonly family: Family;
  readonly motion: CarMotion;
  /** Only of a bend: a joint that is torn, loose or firmer. */
  readonly changed?: { readonly position: string; readonly fault: RubberFault };
}

/** A bar between two wheels that travel differently. */
export interface BarTwist {
  readonly axle: "front" | "rear";
  readonly twist: Figure;
  readonly force: Figure;
}

/** Four wheels on level ground over one motion of the car. */
export interface WholeCar {
  readonly motion: CarMotion;
  /** The better known axle never covers the worse one: the lower of both. */
  readonly rung: Rung;
  readonly invented: boolean;
  readonly parts: readonly [];
  /** What stands at the upright axis of the plots. */
  readonly axis: "heave, mm" | "roll, °" | "pitch, °" | "rack, mm" | "sideways, g";
  readonly plots: readonly TravelPlot[];
  readonly figures: readonly Figure[];
  /** Those of the figures that all four wheels have, beside each other. */
  readonly corners: readonly CornerRow[];
  readonly sentence: string;
  readonly howSure: string;
  readonly computedSo: string;
}
