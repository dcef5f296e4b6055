import type { Grade } from "#vehicle";
import { formatNumber } from "../fault/format-figure.ts";
import { differenceWords } from "./difference-words.ts";
import type { PlaceFinding, Reason } from "./place-finding.ts";
import type { PlaceLooks } from "./place-looks.ts";
import { judgeReading, type PlaceContext, seenReason, shownValue, summarise } from "./reading-reasons.ts";
import { gradeOfSign, signWords } from "./signs.ts";
import { quantityForms } from "./standard-readings.ts";
import { judgeTreadAcross, wearPattern } from "./tread-across.ts";
import { type WearPattern, wearWords } from "./wear-pattern.ts";

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
      found: looks?.notTaken
        ? "not taken"
        : looks?.signs.includes("cannot-reach")
          ? "cannot be reached"
          : "not looked at",
      reasons: [],
      limitWords: null,
      howSure: "",
      caveat: null,
    };
  const signs = looks.signs.flatMap((sign): Reason[] => {
    const grade = gradeOfSign(position.kind, sign);
    return grade === null ? [] : [seenReason(null, signWords[sign], grade)];
  });
  const readings = summarise(looks.readings).flatMap((r) => judgeReading(r, context));
  const across = position.kind === "tyre" ? judgeTreadAcross(looks.readings, context.confidence) : [];
  const wear = position.kind === "tyre" ? wearPattern(looks.readings, looks.signs, across) : null;
  const weighed = {
    ...base,
    ...weighReasons([...signs, ...readings, ...across]),
    found: foundWords(looks, signs, readings, wear),
    looks,
    ...(wear !== null && { wear }),
  };
  if (isJudged(looks, weighed.reasons)) return weighed;
  const open = weighed.reasons.find(({ judgement }) => judgement?.decision === null);
  return { ...weighed, grade: null, notKnown: true, howSure: howSureOf(open) };
}

/**
 * An eye has looked, a reading was held against a limit, or it differs from its twin or its past. Two sides that are
 * alike, or no change, do not make a place sound.
 */
const isJudged = (looks: PlaceLooks, reasons: readonly Reason[]): boolean =>
  reasons.length === 0 ||
  looks.looks.some(({ content }) => content.kind === "nothing-seen") ||
  reasons.some(
    ({ judgement, grade }) =>
      grade > 0 || judgement === null || (judgement.against === "limit" && judgement.decision !== null),
  );

/** What all reasons at a place come to: the worst of them decides; among equals one that was held against something. */
export function weighReasons(
  unsorted: readonly Reason[],
): Pick<PlaceFinding, "grade" | "closeToCall" | "notKnown" | "reasons" | "limitWords" | "howSure" | "caveat"> {
  const isHeld = ({ judgement }: Reason): number => (judgement?.decision === null ? 0 : 1);
  const reasons = unsorted.toSorted((a, b) => b.grade - a.grade || isHeld(b) - isHeld(a));
  const worst = reasons[0];
  const grade: Grade = worst?.grade ?? 0;
  const certain = Math.max(0, ...reasons.flatMap((r) => (r.closeToCall ? [] : [r.grade])));
  const deciding = reasons.find((r) => r.limit !== null && r.judgement?.decision != null && r.grade === grade);
  return {
    grade,
    closeToCall: reasons.some((r) => r.closeToCall && gradeBeyond(r) > certain),
    notKnown: false,
    reasons,
    limitWords: deciding?.limit ?? null,
    howSure: howSureOf(worst),
    caveat: null,
  };
}

/** The grade it has if it is beyond after all. */
const gradeBeyond = ({ judgement, grade }: Reason): Grade =>
  judgement !== null && "gradeBeyond" in judgement ? judgement.gradeBeyond : grade;

function foundWords(
  looks: PlaceLooks,
  signs: readonly Reason[],
  readings: readonly Reason[],
  wear: WearPattern | null,
): string {
  const parts = [
    ...signs.map((s) => s.text),
    ...summarise(looks.readings).flatMap(({ quantity, value }) => [
      `${quantityForms[quantity].label.toLowerCase()} ${shownValue(quantity, value)}`,
      ...differenceWords(readings, quantity),
    ]),
    ...(wear === null || wear === "feathered" ? [] : [wearWords[wear]]),
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
