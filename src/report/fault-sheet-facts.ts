import type { FaultEffect, WheelPose } from "#casework";
import type { Family } from "#drawing";

/** Everything the printed sheet of one fault is made from; there is no clock and nothing is looked up. */
export interface FaultSheetFacts {
  readonly family: Family;
  readonly effect: FaultEffect;
  /** The date as it is to be written on the sheet. */
  readonly date: string;
  /** Who made the sheet; absent = the cell is left out. */
  readonly by?: string;
  /** The wheel at other travels, drawn thin. */
  readonly ghosts?: readonly WheelPose[];
}
