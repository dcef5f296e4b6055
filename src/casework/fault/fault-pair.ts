import { type CornerLoad, differenceOf, type ElasticState, type StateBand } from "#engines/linkage";
import { subtractJets } from "#numeric";
import { degreesFromRadians } from "#quantity";
import type { Position, TornShare } from "#vehicle";
import type { FaultQuestion } from "../fault-effect.ts";
import type { CornerModel } from "./corner-model.ts";
import type { CornerState } from "./fault-states.ts";

/** The states a fault is looked at in: its middle, and its ends where it is a range. */
export interface FaultStates {
  readonly model: CornerModel;
  readonly position: Position;
  readonly question: FaultQuestion;
  readonly tornShare: TornShare | null;
  readonly load: CornerLoad;
  readonly sound: CornerState;
  readonly faulty: CornerState;
  /** Lower and upper end of the torn share; empty where the fault is no range. */
  readonly ends: readonly CornerState[];
}

/** Bands of sound and faulty at one load. */
export interface PairBand {
  readonly sound: StateBand;
  readonly faulty: StateBand;
  readonly ends: readonly StateBand[];
  readonly others: readonly ElasticState[];
}

/** The middle of a range of remaining rate: geometric, because rates multiply. */
export const middleShare = (t: TornShare): number => Math.sqrt(t.low * t.high);

/** Balances of all states at one load with their derivatives; null where one finds none. */
export function solvePair(states: FaultStates, load: CornerLoad): PairBand | null {
  const sound = states.sound.bandAt(load);
  const answer = states.faulty.solve(load);
  const faulty = answer && states.faulty.band.bandAt(answer.state, load);
  const ends = states.ends.flatMap((s) => s.bandAt(load) ?? []);
  if (!sound || !answer || !faulty || ends.length !== states.ends.length) return null;
  return { sound, faulty, ends, others: answer.others };
}

/** A quantity of the faulty state less that of the sound one: value and standard deviation, degrees. */
export function changeOf(
  states: FaultStates,
  pair: PairBand,
  key: "toe" | "camber",
  faulty: StateBand = pair.faulty,
): { value: number; sd: number; jet: Float64Array } {
  const { jets } = states.sound.band;
  const d = differenceOf(jets, faulty[key], pair.sound[key]);
  return {
    value: degreesFromRadians(d.value),
    sd: degreesFromRadians(d.sd),
    jet: subtractJets(faulty[key], pair.sound[key]),
  };
}
