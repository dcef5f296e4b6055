import type { Corner, Family } from "#vehicle";
import type { HandQuestion, Held } from "./hold.ts";

/** What a printed sheet of a car line is asked with; each kind has a page of its own. */
export type SheetQuestion = {
  readonly kind: "hold";
  readonly family: Family;
  readonly corner: Corner;
  readonly held: Held;
  /** null: no hand is looked at. */
  readonly test: HandQuestion | null;
};
