import {
  type FluidGone,
  firmerWords,
  gradeOfPlay,
  gradeOfSign,
  type RubberFault,
  type SignName,
  signWords,
} from "#casework";
import { metresFromMm, mmFromMetres } from "#quantity";
import type { Grade, Position } from "../car.ts";

/** One or more signs an eye or a hand has found; the grade follows from them. Never empty. */
export interface SeenMark {
  readonly kind: "seen";
  readonly signs: readonly SignName[];
}

/** What can be wrong or different with a part, as far as something is computed from it. */
export type PartFault = RubberFault | FluidGone;

/** What a person has marked at a position. "sound" is: looked at, nothing seen. */
export type PositionMark = { readonly kind: "sound" } | SeenMark | PartFault;
/** Position id to its mark; a position that is absent has not been looked at. */
export type PositionMarks = ReadonlyMap<string, PositionMark>;

/** Largest play and factors that can be marked; common practice, no source. */
export const PLAY_MM = { low: 0.1, high: 10, usual: 1 } as const;
/** What "loose" means as long as nobody has measured it. */
export const ASSUMED_PLAY = { kind: "loose", play: metresFromMm(PLAY_MM.usual), assumed: true } as const;
export const FIRMER_FACTOR = { low: 1.05, high: 10, usual: 2 } as const;

const worst = (kind: Position["kind"], signs: readonly SignName[]): Grade | null =>
  signs.reduce<Grade | null>((last, sign) => {
    const grade = gradeOfSign(kind, sign);
    return grade === null || (last !== null && last >= grade) ? last : grade;
  }, null);

/**
 * The grade of a mark on a kind of position, by the workshop scale; null where nobody could look.
 * A firmer rubber is no finding; of several signs the worst counts.
 */
export const gradeOfMark = (mark: PositionMark, kind: Position["kind"]): Grade | null => {
  switch (mark.kind) {
    case "sound":
    case "firmer":
      return 0;
    case "torn":
      return mark.grade;
    case "loose":
      return gradeOfPlay(kind, mark.play);
    case "fluid-gone":
      return gradeOfSign(kind, "fluid-gone");
    case "seen":
      return worst(kind, mark.signs);
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
      return `loose, ${Number(mmFromMetres(mark.play).toFixed(2))} mm${mark.assumed ? " assumed" : ""}`;
    case "firmer":
      return firmerWords(mark);
    case "fluid-gone":
      return "fluid gone";
    case "seen":
      return mark.signs.map((sign) => signWords[sign]).join(", ");
  }
};

/** What of a mark something is computed from; null where nothing is. */
export const partFaultOfMark = (mark: PositionMark | null): PartFault | null =>
  mark === null || mark.kind === "sound" || mark.kind === "seen" ? null : mark;

/** A fault the linkage balances the corner with; a bush without its fluid stands as a sound one. */
export const balancedFault = (fault: PartFault | null): RubberFault | null =>
  fault?.kind === "fluid-gone" ? null : fault;

/** The fault of a mark, for the linkage; null where it computes nothing from it. */
export const faultOfMark = (mark: PositionMark | null): RubberFault | null => balancedFault(partFaultOfMark(mark));

/** Whether two marks say the same: kind and, where they have one, grade, amount and signs. */
export const isSameMark = (a: PositionMark, b: PositionMark): boolean => JSON.stringify(a) === JSON.stringify(b);

/** A mark with one sign more, or with that sign taken off again; null where none is left. */
export const withSign = (mark: PositionMark | null, sign: SignName): PositionMark | null => {
  if (mark?.kind !== "seen") return { kind: "seen", signs: [sign] };
  const without = mark.signs.filter((other) => other !== sign);
  const signs = without.length < mark.signs.length ? without : joinSign(mark.signs, sign);
  return signs.length === 0 ? null : { kind: "seen", signs };
};

/** "Cannot be reached" stands alone: whoever saw something has reached it. */
const joinSign = (signs: readonly SignName[], sign: SignName): readonly SignName[] =>
  sign === "cannot-reach" ? [sign] : [...signs.filter((other) => other !== "cannot-reach"), sign];
