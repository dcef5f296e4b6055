import type { Corner, Family } from "#vehicle";
import type { BodiesAsked } from "./bodies.ts";
import type { CarQuestion } from "./car.ts";
import type { FaultQuestion } from "./fault-effect.ts";
import type { HandQuestion, Held } from "./hold.ts";
import type { MatchAsked } from "./match.ts";
import type { ShakeQuestion } from "./shake.ts";
import type { TravelSheetQuestion } from "./travel/travel-sheet.ts";

/** What a printed sheet of a car line (or of a layout from a file) is asked with; each kind has a page of its own. */
export type SheetQuestion =
  | { readonly kind: "fault"; readonly family: Family; readonly question: FaultQuestion }
  | {
      readonly kind: "hold";
      readonly family: Family;
      readonly corner: Corner;
      readonly held: Held;
      /** null: no hand is looked at. */
      readonly test: HandQuestion | null;
    }
  | { readonly kind: "car"; readonly question: CarQuestion }
  | { readonly kind: "match"; readonly question: MatchAsked }
  | { readonly kind: "travel"; readonly question: TravelSheetQuestion }
  | { readonly kind: "shake"; readonly family: Family; readonly question: ShakeQuestion }
  /** A layout from a file, of no car line. */
  | { readonly kind: "layout"; readonly question: BodiesAsked };
