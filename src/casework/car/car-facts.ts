import type { CarOnGround, computeSteeredAxle, TravelBand } from "#engines/linkage";
import type { CarQuestion } from "../car.ts";
import type { CornerModel } from "../fault/corner-model.ts";

export type WheelName = keyof CarOnGround;
export type Steered = NonNullable<ReturnType<typeof computeSteeredAxle>>;

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
  readonly steered: readonly { readonly amount: number; readonly steered: Steered }[];
  readonly steeredThere: Steered | null;
}
