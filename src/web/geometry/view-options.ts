import { gradeWords } from "#drawing";
import { formatMark } from "../underside/marks-in-address.ts";
import { ASSUMED_PLAY, FIRMER_FACTOR, type PartFault, wordsOfMark } from "../underside/position-mark.ts";
import type { PossibleFaults } from "../underside/rubber-at.ts";

/** What a place can be looked at as. */
export interface ViewOption {
  readonly key: string;
  readonly words: string;
  readonly fault: PartFault;
}

/** A fault by what it is: "torn, repair first", "loose, 1 mm assumed", "firmer, 2 times". */
export const viewWords = (fault: PartFault): string =>
  fault.kind === "torn" ? `torn, ${gradeWords[fault.grade].toLowerCase()}` : (wordsOfMark(fault) ?? fault.kind);

/** Everything a place can be looked at as; what it is marked or looked at as already keeps its own amount. */
export const viewOptionsOf = (possible: PossibleFaults, own: readonly (PartFault | null)[]): readonly ViewOption[] => {
  const usual: readonly PartFault[] = [
    ...(possible.fluidGone ? [{ kind: "fluid-gone" } as const] : []),
    ...possible.tornGrades.map((grade) => ({ kind: "torn", grade }) as const),
    ...(possible.loose ? [ASSUMED_PLAY] : []),
    ...(possible.firmer ? [{ kind: "firmer", factor: FIRMER_FACTOR.usual } as const] : []),
  ];
  const all = new Map(
    [...own, ...usual].flatMap((fault) => (fault === null ? [] : [[formatMark(fault), fault] as const])),
  );
  return [...all].map(([key, fault]) => ({ key, words: viewWords(fault), fault }));
};
