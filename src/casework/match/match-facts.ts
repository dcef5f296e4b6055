import type { Match, TravelBand } from "#engines/linkage";
import type { CornerModel } from "../fault/corner-model.ts";
import type { MatchAsked } from "../match.ts";

/** Everything a match is told from. */
export interface MatchFacts {
  readonly asked: MatchAsked;
  readonly model: CornerModel;
  readonly match: Match;
  /** Bands with the deviations on file, about the points as they were and as they are matched. */
  readonly before: TravelBand;
  readonly after: TravelBand;
}
