import type { CornerLoad, WheelBand, WheelState } from "#engines/linkage";
import type { Jet } from "#numeric";
import type { Position, TornShare } from "#vehicle";
import type { FaultQuestion, Firmness } from "../fault-effect.ts";
import type { CornerKnown } from "./corner-model.ts";
import type { RepairState, SolvedState } from "./fault-states.ts";
import { isSignSure } from "./settle.ts";

/** The states a fault is looked at in: its middle, and its ends where it is a range. */
export interface FaultStates {
  readonly model: CornerKnown;
  readonly position: Position;
  readonly question: FaultQuestion;
  readonly tornShare: TornShare | null;
  /** Of a firmer part told by its hardness. */
  readonly firmness: Firmness | null;
  readonly load: CornerLoad;
  readonly sound: RepairState;
  readonly faulty: RepairState;
  /** At the lower and upper end of the torn share, or of how firm it may be; empty where the fault is no range. */
  readonly ends: readonly RepairState[];
}

/** Bands of sound and faulty at one load. */
export interface PairBand {
  readonly sound: WheelBand;
  readonly faulty: WheelBand;
  readonly ends: readonly WheelBand[];
  readonly others: readonly WheelState[];
  /** Set where it is not 97.5 % sure on which side of its play the joint stands. */
  readonly open: OpenPlay | null;
}

/** A loose joint near the end of its play: which of its balances holds is not known. */
export interface OpenPlay {
  /** What decides it: positive while the joint stays where it is computed. */
  readonly reserve: Jet;
  /** The joint held on each side of its play, between which the corner lies. */
  readonly sides: readonly WheelBand[];
}

/** The middle of a range of remaining rate: geometric, because rates multiply. */
export const middleShare = (t: TornShare): number => Math.sqrt(t.low * t.high);

/** Balances of all states at one load with their derivatives; null where one finds none. */
export function solvePair(states: FaultStates, load: CornerLoad): PairBand | null {
  const sound = states.sound.bandAt(load);
  const answer = states.faulty.solve(load);
  const faulty = answer?.band();
  const ends = states.ends.flatMap((s) => s.bandAt(load) ?? []);
  if (!sound || !answer || !faulty || ends.length !== states.ends.length) return null;
  return { sound, faulty, ends, others: answer.others, open: findOpenPlay(states, answer, load) };
}

function findOpenPlay({ faulty }: FaultStates, solved: SolvedState, load: CornerLoad): OpenPlay | null {
  const { jets } = faulty.band;
  const reserve = solved.reserves().find((jet) => !isSignSure(jet[0] as number, jets.deviation(jet)));
  return reserve === undefined ? null : { reserve, sides: faulty.sidesAt(load) };
}
