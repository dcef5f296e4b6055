import type { Appraisal, CarDocument, VisitDocument } from "#casework";
import type { Family } from "#drawing";

/** What of a workshop's rates stands on the page. */
export interface OwnersPageRates {
  readonly workshop: string;
  readonly currency: string;
  /** Share of tax on top of every price, 0 to 1. */
  readonly taxShare: number;
}

/**
 * Everything the owner's page of one visit is made from, as the server and the command line have it at hand; there is no
 * clock and nothing is looked up. The words and prices on it are those of the appraisal.
 */
export interface OwnersPageFacts {
  /** Family on file; null = not chosen, the drawing is then left out. */
  readonly family: Family | null;
  readonly car: Pick<CarDocument, "registration" | "name" | "owner" | "year" | "distanceUnit" | "invented">;
  readonly visit: Pick<VisitDocument, "odometerKm" | "date" | "by" | "closed">;
  readonly rates: OwnersPageRates;
  /** What the owner came with, in the owner's words; "" = nothing was said. */
  readonly words: string;
  readonly appraisal: Pick<
    Appraisal,
    | "findings"
    | "notLookedAt"
    | "uncured"
    | "plan"
    | "planDocument"
    | "suspects"
    | "complaints"
    | "asLeft"
    | "axlesAsLeft"
    | "jobCard"
  >;
  /** The date as it is to be written on the page. */
  readonly date: string;
}
