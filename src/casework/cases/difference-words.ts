import type { QuantityName } from "#vehicle";
import type { Reason } from "./place-finding.ts";
import { shownValue } from "./reading-reasons.ts";

const isQuantity = (about: Reason["about"]): about is QuantityName =>
  about !== null && about !== "total-toe" && about !== "thrust";

/**
 * By how much readings of one quantity differ from the other side or from last time where that is beyond what they may:
 * "13 mm more than the other side"; none where they differ by no more.
 */
export const differenceWords = (reasons: readonly Reason[], quantity: QuantityName): readonly string[] =>
  reasons.flatMap(({ about, grade, judgement, towards }) => {
    if (!isQuantity(about) || about !== quantity || grade === 0 || towards === null || judgement === null) return [];
    if (judgement.decision !== "beyond" || judgement.against === "limit") return [];
    const by = judgement.against === "twin" ? judgement.difference : judgement.change;
    const than = judgement.against === "twin" ? "the other side" : "last time";
    return [`${shownValue(quantity, Math.abs(by))} ${towards} than ${than}`];
  });
