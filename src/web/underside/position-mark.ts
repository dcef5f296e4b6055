import type { RubberFault } from "#casework";
import { mmFromMetres } from "#quantity";
import type { Grade } from "../car.ts";

/** What a person has marked at a position. "sound" is: looked at, nothing seen. */
export type PositionMark = { readonly kind: "sound" } | RubberFault;
/** Position id to its mark; a position that is absent has not been looked at. */
export type PositionMarks = ReadonlyMap<string, PositionMark>;

/** Largest play and factors that can be marked; common practice, no source. */
export const PLAY_MM = { low: 0.1, high: 10, usual: 1 } as const;
export const FIRMER_FACTOR = { low: 1.05, high: 10, usual: 2 } as const;

/**
 * The grade whose mark is drawn at a position. Play has no grade before it is held against a limit and is drawn as watched;
 * a firmer rubber is no finding.
 */
export const gradeOfMark = (mark: PositionMark): Grade => {
  switch (mark.kind) {
    case "sound":
    case "firmer":
      return 0;
    case "torn":
      return mark.grade;
    case "loose":
      return 1;
  }
};

/** A mark in a few words, as it hangs on the drawing beside its grade; null where the grade says it all. */
export const wordsOfMark = (mark: PositionMark): string | null => {
  switch (mark.kind) {
    case "sound":
      return null;
    case "torn":
      return "torn";
    case "loose":
      return `loose, ${Number(mmFromMetres(mark.play).toFixed(2))} mm`;
    case "firmer":
      return `firmer, ${mark.factor} times`;
  }
};

/** The fault of a mark, for the linkage; null where nothing is wrong or different. */
export const faultOfMark = (mark: PositionMark | null): RubberFault | null =>
  mark === null || mark.kind === "sound" ? null : mark;
