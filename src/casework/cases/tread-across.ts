import type { SignName } from "./look.ts";
import type { Reason } from "./place-finding.ts";
import type { CountedReading } from "./place-looks.ts";
import { limitReason, shownValue } from "./reading-reasons.ts";
import type { WearPattern } from "./wear-pattern.ts";

/** Metres; from so much on the points of one tyre differ more than a sound one wears (common practice, no source). */
const MOST_APART = 0.0015;

const POINTS = ["inner", "middle", "outer"] as const;

type Points = Readonly<Record<(typeof POINTS)[number], CountedReading>>;

/** The last readings of all three points in one state of load; null where one is missing. */
function pointsOf(readings: readonly CountedReading[]): Points | null {
  const tread = readings.filter((r) => r.quantity === "tread");
  const newest = tread.toSorted((a, b) => b.look.sequence - a.look.sequence)[0];
  const at = (point: string) => tread.find((r) => r.point === point && r.loadState === newest?.loadState);
  const [inner, middle, outer] = POINTS.map(at);
  return inner && middle && outer ? { inner, middle, outer } : null;
}

/** What runs a tyre so. */
const pointsTo: Readonly<Record<WearPattern, string>> = {
  "inner-edge": "worn more at the inner edge, as by toe out or negative camber",
  "outer-edge": "worn more at the outer edge, as by toe in or positive camber",
  centre: "worn more in the middle, as by too much pressure",
  "both-shoulders": "worn more at both edges, as by too little pressure",
  feathered: "feathered, as by toe: a sharp edge toward the car's centre by toe in, outward by toe out",
};

/** What the least and most of the three points say of how the wheel has run. */
function patternOf({ inner, middle, outer }: Points): WearPattern {
  const edges = (inner.value + outer.value) / 2;
  if (Math.abs(inner.value - outer.value) >= Math.abs(middle.value - edges))
    return inner.value < outer.value ? "inner-edge" : "outer-edge";
  return middle.value < edges ? "centre" : "both-shoulders";
}

/**
 * How a tyre has worn: by its three points where they lie further apart than is usual beyond doubt, else by the sign
 * "feathered"; null where neither says so.
 * @param across what judgeTreadAcross made of the points
 */
export function wearPattern(
  readings: readonly CountedReading[],
  signs: readonly SignName[],
  across: readonly Reason[],
): WearPattern | null {
  const points = pointsOf(readings);
  const isBeyond = across.some(({ judgement }) => judgement?.decision === "beyond");
  if (points !== null && isBeyond) return patternOf(points);
  return signs.includes("feathered") ? "feathered" : null;
}

/**
 * The three points of a tyre held against each other; none where one is missing. Beyond what is usual it asks to be
 * planned at most, since no maker stands behind the figure.
 */
export function judgeTreadAcross(readings: readonly CountedReading[], confidence: number): readonly Reason[] {
  const points = pointsOf(readings);
  if (points === null) return [];
  const all = POINTS.map((point) => points[point]);
  const least = all.reduce((a, b) => (b.value < a.value ? b : a));
  const most = all.reduce((a, b) => (b.value > a.value ? b : a));
  const apart = {
    value: most.value - least.value,
    u: Math.hypot(most.u, least.u),
    loadState: least.loadState,
  };
  const words = POINTS.map((point) => `${point} ${shownValue("tread", points[point].value)}`).join(", ");
  const beyond = apart.value > MOST_APART ? `${pointsTo[patternOf(points)]}: ` : "";
  const shown = `${beyond}${words}`;
  const limit = {
    lower: null,
    upper: MOST_APART,
    loadState: null,
    owner: "practice",
    source: "common practice, no source",
    grade: 2,
    words: `limit ${shownValue("tread", MOST_APART)} apart, general practice`,
  } as const;
  return [limitReason("tread", shown, apart, limit, confidence)];
}
