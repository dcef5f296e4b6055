import type { Grade, Owner } from "#vehicle";
import { type Decision, decideConformity } from "./conformity.ts";
import type { Estimate, Limits } from "./normal.ts";

/** A reading with the state of load it was taken in; null: it does not matter. */
export interface Reading extends Estimate {
  readonly loadState: string | null;
}

/** A limit and whose it is. */
export interface OwnedLimits extends Limits {
  readonly owner: Owner;
  readonly source: string;
  /** The state of load it is meant for; null: any. */
  readonly loadState: string | null;
  /** Grade of a finding beyond it, if its owner may raise it that far. */
  readonly grade: Grade;
  /** Beyond it the thing is dangerous by itself, as a sign that is seen would be: no owner keeps its grade down. */
  readonly byItself?: boolean;
}

/** Against somebody's limit. */
export interface LimitJudgement {
  readonly against: "limit";
  readonly owner: Owner;
  readonly source: string;
  readonly probabilityWithin: number;
  readonly acceptFrom: number | null;
  readonly acceptTo: number | null;
  readonly decision: Decision;
  /** Grade beyond the limit, as far as its owner may raise it. */
  readonly gradeBeyond: Grade;
}

/** Against the other side or a new part. */
export interface TwinJudgement {
  readonly against: "twin";
  /** Reading less twin. */
  readonly difference: number;
  readonly u: number;
  /** Chance that the two differ by no more than is allowed. */
  readonly probabilityWithin: number;
  readonly decision: Decision;
}

/** Against its own past. */
export interface PastJudgement {
  readonly against: "past";
  /** Reading now less reading then. */
  readonly change: number;
  readonly u: number;
  /** Chance that it changed by no more than is allowed. */
  readonly probabilityWithin: number;
  readonly decision: Decision;
}

export type Judgement = LimitJudgement | TwinJudgement | PastJudgement;

/** Two things that may not be held against each other: taken in different states of load. */
export interface NotComparable {
  readonly against: Judgement["against"];
  readonly decision: null;
  readonly reading: string;
  readonly other: string;
}

/** Highest grade an owner's limit can raise a finding to: "repair first" needs the maker, the law or a danger by itself. */
export const gradeCeiling = (owner: Owner): Grade => (owner === "maker" || owner === "law" ? 4 : 2);

function findMismatch(against: Judgement["against"], a: string | null, b: string | null): NotComparable | null {
  return a === null || b === null || a === b ? null : { against, decision: null, reading: a, other: b };
}

/** Holds a reading against a limit at a confidence. */
export function judgeAgainstLimit(
  reading: Reading,
  limit: OwnedLimits,
  confidence: number,
): LimitJudgement | NotComparable {
  const mismatch = findMismatch("limit", reading.loadState, limit.loadState);
  if (mismatch) return mismatch;
  const { probabilityWithin, acceptFrom, acceptTo, decision } = decideConformity(reading, limit, confidence);
  const ceiling = limit.byItself === true ? limit.grade : gradeCeiling(limit.owner);
  const gradeBeyond = Math.min(limit.grade, ceiling) as Grade;
  return {
    against: "limit",
    owner: limit.owner,
    source: limit.source,
    probabilityWithin,
    acceptFrom,
    acceptTo,
    decision,
    gradeBeyond,
  };
}

/** Difference of two readings, and how it stands to plus or minus what is allowed. */
function judgeDifference(a: Reading, b: Reading, allowed: number, confidence: number) {
  const difference = { value: a.value - b.value, u: Math.hypot(a.u, b.u) };
  const { probabilityWithin, decision } = decideConformity(difference, { lower: -allowed, upper: allowed }, confidence);
  return { difference, probabilityWithin, decision };
}

/** Holds a reading against its twin: "within" means they differ by no more than `allowed` (above nought). */
export function judgeAgainstTwin(
  reading: Reading,
  twin: Reading,
  allowed: number,
  confidence: number,
): TwinJudgement | NotComparable {
  const mismatch = findMismatch("twin", reading.loadState, twin.loadState);
  if (mismatch) return mismatch;
  const { difference, probabilityWithin, decision } = judgeDifference(reading, twin, allowed, confidence);
  return { against: "twin", difference: difference.value, u: difference.u, probabilityWithin, decision };
}

/** Holds a reading against an earlier one of the same thing: "within" means it changed by no more than `allowed`. */
export function judgeAgainstPast(
  now: Reading,
  then: Reading,
  allowed: number,
  confidence: number,
): PastJudgement | NotComparable {
  const mismatch = findMismatch("past", now.loadState, then.loadState);
  if (mismatch) return mismatch;
  const { difference, probabilityWithin, decision } = judgeDifference(now, then, allowed, confidence);
  return { against: "past", change: difference.value, u: difference.u, probabilityWithin, decision };
}
