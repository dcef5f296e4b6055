import type { CornerAssembly, Position, TornShare } from "#vehicle";
import type { HandQuestion } from "../hold.ts";
import type { Movement } from "./hand-movement.ts";

/** Everything a hand test is told from. */
export interface HandFacts {
  readonly assembly: CornerAssembly;
  readonly position: Position;
  readonly question: HandQuestion;
  readonly tornShare: TornShare | null;
  readonly movement: Movement;
  /** Movements at the lower and upper end of what is left of a torn rate; null for play. */
  readonly ends: readonly [Movement, Movement] | null;
  readonly drawn: readonly Movement[];
}
