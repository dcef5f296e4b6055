import type { Judgement, NotComparable } from "#engines/metrology";
import type { FindingKind, Grade, Position, QuantityName } from "#vehicle";
import type { PlaceLooks } from "./place-looks.ts";
import type { WearPattern } from "./wear-pattern.ts";

/** Held against nothing, and why: nothing on file, or read in a state that says nothing. */
export interface NotJudged {
  readonly against: Judgement["against"];
  readonly decision: null;
  readonly why: string;
}

/** What a reason is about: a quantity that is read, or what follows from both wheels of an axle. */
export type ReasonSubject = QuantityName | "total-toe" | "thrust";

/** One thing that speaks for a grade. */
export interface Reason {
  /** null: a sign, seen by eye or hand. */
  readonly about: ReasonSubject | null;
  readonly text: string;
  readonly grade: Grade;
  readonly closeToCall: boolean;
  readonly judgement: Judgement | NotComparable | NotJudged | null;
  /** Whether the reading lies below or above what it was held against; null: neither, or held against nothing. */
  readonly towards: "less" | "more" | null;
  /** The limit it was held against, as it is written: "limit 22.0 mm, by its maker"; null without one. */
  readonly limit: string | null;
}

/** What follows from everything seen at one place. */
export interface PlaceFinding {
  readonly place: string;
  readonly label: string;
  readonly axle: Position["axle"];
  readonly side: Position["side"];
  readonly kind: FindingKind;
  /** null: nobody has looked, or what was read says nothing (notKnown). */
  readonly grade: Grade | null;
  readonly closeToCall: boolean;
  /** Read, and yet not known: the reading was taken in a state that says nothing; the caveat says which. */
  readonly notKnown: boolean;
  /** What was found, in a few words; "nothing seen" where that is it. */
  readonly found: string;
  readonly reasons: readonly Reason[];
  /** The limit that decided, as it is written: "limit 22.0 mm, by its maker"; null without one. */
  readonly limitWords: string | null;
  readonly howSure: string;
  /** What it must not be read without: "Judged on heights that had not settled."; null without. */
  readonly caveat: string | null;
  readonly looks: PlaceLooks | null;
  /** How a tyre has worn across; absent: no tyre, or nothing stands out. */
  readonly wear?: WearPattern;
}
