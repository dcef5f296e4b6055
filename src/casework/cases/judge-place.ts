import type { Grade } from "#vehicle";
import { formatNumber } from "../fault/format-figure.ts";
import type { PlaceFinding, Reason } from "./place-finding.ts";
import type { PlaceLooks } from "./place-looks.ts";
import { judgeReading, type PlaceContext, shownValue, summarise } from "./reading-reasons.ts";
import { gradeOfSign, signWords } from "./signs.ts";
import { quantityForms } from "./standard-readings.ts";

/** Judges one place; a place without looks is "not looked at" and has no grade. */
export function judgePlace(looks: PlaceLooks | null, context: PlaceContext): PlaceFinding {
  const { position } = context;
  const base = {
    place: position.id,
    label: position.label,
    axle: position.axle,
    side: position.side,
    kind: position.kind,
    looks,
  };
  if (!looks?.seen)
    return {
      ...base,
      grade: null,
      closeToCall: false,
      notKnown: false,
      found: looks?.notTaken ? "not taken" : looks ? "cannot be reached" : "not looked at",
      reasons: [],
      limitWords: null,
      howSure: "",
      caveat: null,
    };
  const signs = looks.signs.flatMap((sign): Reason[] => {
    const grade = gradeOfSign(position.kind, sign);
    return grade === null
      ? []
      : [
          {
            about: null,
            text: signWords[sign],
            grade,
            closeToCall: false,
            judgement: null,
            towards: null,
            limit: null,
          },
        ];
  });
  const readings = summarise(looks.readings).flatMap((r) => judgeReading(r, context));
  return { ...base, ...weighReasons([...signs, ...readings]), found: foundWords(looks, signs), looks };
}

/** What all reasons at a place come to: the worst of them decides; among equals one that was held against something. */
export function weighReasons(
  unsorted: readonly Reason[],
): Pick<PlaceFinding, "grade" | "closeToCall" | "notKnown" | "reasons" | "limitWords" | "howSure" | "caveat"> {
  const isJudged = ({ judgement }: Reason): number => (judgement?.decision === null ? 0 : 1);
  const reasons = unsorted.toSorted((a, b) => b.grade - a.grade || isJudged(b) - isJudged(a));
  const worst = reasons[0];
  const grade: Grade = worst?.grade ?? 0;
  const deciding = reasons.find((r) => r.limit !== null && r.judgement?.decision != null && r.grade === grade);
  return {
    grade,
    closeToCall:
      reasons.some((r) => r.closeToCall) && !reasons.some((r) => !r.closeToCall && r.grade >= grade && r.grade > 0),
    notKnown: false,
    reasons,
    limitWords: deciding?.limit ?? null,
    howSure: howSureOf(worst),
    caveat: null,
  };
}

function foundWords(looks: PlaceLooks, signs: readonly Reason[]): string {
  const parts = [
    ...signs.map((s) => s.text),
    ...summarise(looks.readings).map(
      (r) => `${quantityForms[r.quantity].label.toLowerCase()} ${shownValue(r.quantity, r.value)}`,
    ),
  ];
  return parts.length === 0 ? "nothing seen" : parts.join(", ");
}

const BEYOND_WHAT = {
  limit: "the limit",
  twin: "what the two sides may differ by",
  past: "what it may change by",
} as const;

function howSureOf(worst: Reason | undefined): string {
  if (!worst) return "Looked at; nothing speaks against it.";
  const { judgement } = worst;
  if (!judgement) return "Seen by eye or hand.";
  if (judgement.decision === null)
    return "why" in judgement
      ? "Held against nothing: no limit on file."
      : "Not comparable: taken in another state of load.";
  const chance = judgement.probabilityWithin;
  const share = (p: number): string =>
    p > 0.999 ? "more than 99.9 %" : `${formatNumber(p * 100, p > 0.99 ? 1 : 0)} %`;
  if (judgement.decision === "beyond") return `Beyond ${BEYOND_WHAT[judgement.against]} with ${share(1 - chance)}.`;
  if (judgement.decision === "within") return `Within with ${share(chance)}.`;
  return `Too close to call: within with ${share(chance)}.`;
}
