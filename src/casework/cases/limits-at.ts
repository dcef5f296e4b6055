import { type Family, type Limit, type LoadState, type Position, workOf } from "#vehicle";
import type { VisitDocument } from "./documents.ts";
import { limitsFor, whoseWords } from "./reading-reasons.ts";
import { withStampedMinimum } from "./stamped-minimum.ts";

/** A limit as it stands beside a reading: whose it is in words, SI. */
export interface PlaceLimit extends Pick<Limit, "lower" | "upper" | "source"> {
  readonly whose: string;
  /** False: it was set for another state of load, so a reading taken now is not held against it. */
  readonly holds: boolean;
}

/** Limits on file for a quantity at a place of a car line; `loadState` is the state it is read in, null: not said; what is stamped on this car counts first. */
export const limitsAt = (
  family: Family,
  position: Position,
  quantity: Limit["quantity"],
  loadState: LoadState | null,
  visit: Pick<VisitDocument, "discMinimum"> = {},
): readonly PlaceLimit[] =>
  limitsFor(quantity, { position, limits: withStampedMinimum(workOf(family), visit).limits }).map((limit) => ({
    lower: limit.lower,
    upper: limit.upper,
    source: limit.source,
    whose: whoseWords(limit),
    holds: limit.loadState === null || loadState === null || limit.loadState === loadState,
  }));
