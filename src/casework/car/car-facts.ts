import type { CarOnGround, TravelBand } from "#engines/linkage";
import type { Metres } from "#quantity";
import type { CarQuestion } from "../car.ts";
import type { CornerModel } from "../fault/corner-model.ts";
import type { Figure } from "../fault-effect.ts";
import type { RackReading } from "./rack-spread.ts";

export type WheelName = keyof CarOnGround;

/** The front axle steered: where it is asked for and over all amounts, with the axles that may be. */
export interface RackFacts {
  /** null: it is not steered by a rack. */
  readonly there: RackReading | null;
  readonly drawn: readonly RackReading[];
  readonly over: readonly {
    readonly amount: Metres;
    readonly read: RackReading;
    readonly drawn: readonly RackReading[];
  }[];
}

/** Everything a whole car is told from. */
export interface CarFacts {
  readonly question: CarQuestion;
  readonly front: CornerModel;
  readonly rear: CornerModel;
  readonly rest: CarOnGround;
  readonly there: CarOnGround;
  readonly over: readonly { readonly amount: number; readonly car: CarOnGround }[];
  readonly bands: { readonly front: TravelBand; readonly rear: TravelBand };
  /** Only of a moved rack. */
  readonly rack: RackFacts | null;
  /** What the arms take of a nod; only of one. */
  readonly antis: readonly Figure[];
}
