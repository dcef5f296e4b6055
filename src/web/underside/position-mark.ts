import type { RubberFault } from "#casework";
import type { Grade } from "#vehicle";

/** What a person has marked at a position. "sound" is: looked at, nothing seen. */
export type PositionMark = { readonly kind: "sound" } | RubberFault;
/** Position id to its mark; a position that is absent has not been looked at. */
export type PositionMarks = ReadonlyMap<string, PositionMark>;

/** The grades a bush can be marked torn with, and the words on screen. */
export const TORN_GRADES = [
  { grade: 1, word: "Watch" },
  { grade: 2, word: "Plan" },
  { grade: 3, word: "Repair first" },
] as const;

/** Largest play and factors that can be marked; common practice, no source. */
export const PLAY_MM = { low: 0.1, high: 10, usual: 1 } as const;
export const FIRMER_FACTOR = { low: 1.05, high: 10, usual: 2 } as const;

/** The grade whose mark is drawn at a position; what is loose or firmer has none of its own and is drawn as watched. */
export const gradeOfMark = (mark: PositionMark): Grade => {
  switch (mark.kind) {
    case "sound":
      return 0;
    case "torn":
      return mark.grade;
    case "loose":
    case "firmer":
      return 1;
  }
};

/** A mark in a few words, as it hangs on the drawing. */
export const wordsOfMark = (mark: PositionMark): string => {
  switch (mark.kind) {
    case "sound":
      return "looked at, sound";
    case "torn":
      return `torn, ${TORN_GRADES[mark.grade - 1]?.word.toLowerCase()}`;
    case "loose":
      return `loose, ${(mark.play * 1000).toFixed(1)} mm`;
    case "firmer":
      return `firmer, ${mark.factor} times`;
  }
};
