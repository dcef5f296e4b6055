import {
  type Judgement,
  judgeAgainstLimit,
  judgeAgainstPast,
  judgeAgainstTwin,
  type NotComparable,
  type OwnedLimits,
  type Reading,
} from "#engines/metrology";
import type { FindingKind, Grade, Limit, Owner, Position, QuantityName } from "#vehicle";
import { formatNumber, writtenDecimals } from "../fault/format-figure.ts";
import { dangerLimits, playLimits, type SaidLimit } from "./danger-limits.ts";
import type { Reason, ReasonSubject } from "./place-finding.ts";
import type { CountedReading, PlaceLooks } from "./place-looks.ts";
import { quantityForms } from "./standard-readings.ts";

/** How far two sides, or one side and its past, may differ before it counts (SI; from memory, working figures). */
const ALLOWED: Readonly<Partial<Record<QuantityName, { readonly twin: number; readonly past: number }>>> = {
  "ride-height": { twin: 0.01, past: 0.01 },
  pressure: { twin: 0.2e5, past: 0.5e5 },
  tread: { twin: 0.002, past: 0.004 },
  "pad-thickness": { twin: 0.002, past: 0.008 },
  thickness: { twin: 0.0005, past: 0.002 },
  camber: { twin: (0.5 * Math.PI) / 180, past: (0.4 * Math.PI) / 180 },
  caster: { twin: (0.5 * Math.PI) / 180, past: (0.5 * Math.PI) / 180 },
  toe: { twin: (0.2 * Math.PI) / 180, past: (0.15 * Math.PI) / 180 },
  "lost-travel": { twin: 0.0015, past: 0.002 },
  play: { twin: 0.0003, past: 0.0003 },
};

/** A difference to the twin or to the past alone never asks for more than to watch, unless somebody's limit says so. */
const GRADE_OF_DIFFERENCE: Grade = 1;

/** Where the points of a disc are read; what they vary by may have its limit on file under the same name. */
const DISC_THICKNESS = "disc/thickness";

export const ownerWords: Readonly<Record<Owner, string>> = {
  maker: "by its maker",
  law: "by law",
  workshop: "this workshop's",
  practice: "general practice",
  memory: "from memory",
};

/** How far left and right may differ, where it is on file. */
export interface Apart {
  readonly allowed: number;
  readonly owner: Owner;
  readonly grade: Grade;
}

export interface PlaceContext {
  readonly position: JudgedPlace;
  readonly limits: readonly (Limit | SaidLimit)[];
  readonly twin: PlaceLooks | null;
  /** The same place at the visits before. */
  readonly past: PlaceLooks | null;
  readonly confidence: number;
  /** How far the sides may differ by what is on file; absent or null: the working figures count. */
  readonly apart?: (quantity: QuantityName) => Apart | null;
  /** What makes a limit itself unsure, as a standard deviation in the quantity's own unit; absent: nothing. */
  readonly unsure?: (quantity: QuantityName) => number;
  /** What is on file of a quantity that is yet no limit: "372 mm by its maker, no tolerance on file". */
  readonly onFile?: (quantity: QuantityName) => string | null;
}

/** What is judged: a position of the drawing, or a place that is only read. */
export type JudgedPlace = Pick<Position, "id" | "axle" | "side" | "item" | "detail" | "label"> & {
  readonly kind: FindingKind;
};

/** One quantity at one place, several points of it drawn together. */
export interface Summary extends Reading {
  readonly quantity: CountedReading["quantity"];
  readonly points: number;
}

/** Several points of one quantity in one state of load: the smallest counts. */
export function summarise(readings: readonly CountedReading[]): Summary[] {
  const alike = new Map<string, { readonly quantity: CountedReading["quantity"]; readonly all: CountedReading[] }>();
  for (const r of readings) {
    const key = `${r.quantity}/${r.loadState ?? ""}`;
    const known = alike.get(key) ?? { quantity: r.quantity, all: [] };
    known.all.push(r);
    alike.set(key, known);
  }
  return [...alike.values()].map(({ quantity, all }) => {
    const least = all.reduce((a, b) => (b.value < a.value ? b : a));
    return { quantity, value: least.value, u: least.u, loadState: least.loadState, points: all.length };
  });
}

/** The same quantity at another place or time, in the same state of load where it was taken in several. */
function sameReading(looks: PlaceLooks, reading: Summary): Summary | undefined {
  const same = summarise(looks.readings).filter((r) => r.quantity === reading.quantity);
  return same.find((r) => r.loadState === reading.loadState) ?? same[0];
}

/** Limits of a quantity at a place: on file, named by item and detail, by item or by kind; then those of danger by itself. */
export function limitsFor(
  quantity: QuantityName,
  context: {
    readonly limits: readonly (Limit | SaidLimit)[];
    readonly position: Pick<JudgedPlace, "axle" | "item" | "detail" | "kind">;
  },
): readonly (Limit | SaidLimit)[] {
  const { position } = context;
  const own = position.detail ? `${position.item}/${position.detail}` : position.item;
  const names = [own, position.item, position.kind, ...(quantity === "thickness-variation" ? [DISC_THICKNESS] : [])];
  const onFile = context.limits.filter(
    (l) => l.quantity === quantity && (l.axle === null || l.axle === position.axle) && names.includes(l.place),
  );
  return [...onFile, ...dangerLimits(position.kind, quantity, onFile)];
}

/** Whose a limit is, in words. */
export const whoseWords = (limit: Limit | SaidLimit): string =>
  "whose" in limit ? limit.whose : ownerWords[limit.owner];

/** Everything that speaks for a grade in one quantity at one place: limits, the other side, its own past. */
export function judgeReading(reading: Summary, context: PlaceContext): Reason[] {
  const { quantity } = reading;
  const shown = `${quantityForms[quantity].label.toLowerCase()} ${shownValue(quantity, reading.value)}`;
  const limits = limitsFor(quantity, context);
  const held = { ...reading, u: Math.hypot(reading.u, context.unsure?.(quantity) ?? 0) };
  const reasons = limits.map((limit) =>
    limitReason(quantity, shown, held, { ...limit, words: limitText(limit) }, context.confidence),
  );
  if (quantity === "play" && reasons.every(({ judgement }) => judgement?.decision == null))
    reasons.push(...playReasons(reading, shown, context));
  if (reasons.length === 0) reasons.push(notOnFile(quantity, shown, context.onFile?.(quantity) ?? null));
  const allowed = ALLOWED[quantity];
  if (!allowed) return reasons;
  const other = context.twin && sameReading(context.twin, reading);
  if (other) {
    const apart = context.apart?.(quantity) ?? null;
    const most = apart?.allowed ?? allowed.twin;
    const judgement = judgeAgainstTwin(reading, other, most, context.confidence);
    const text = `${shown}, ${shownValue(quantity, other.value)} on the other side; they may differ by ${shownValue(quantity, most)}, ${ownerWords[apart?.owner ?? "memory"]}`;
    reasons.push(differenceReason(quantity, text, judgement, apart?.grade ?? GRADE_OF_DIFFERENCE));
  }
  const before = context.past && sameReading(context.past, reading);
  if (before) {
    const judgement = judgeAgainstPast(reading, before, allowed.past, context.confidence);
    const text = `${shown}, ${shownValue(quantity, before.value)} last time; it may change by ${shownValue(quantity, allowed.past)}, ${ownerWords.memory}`;
    reasons.push(differenceReason(quantity, text, judgement, GRADE_OF_DIFFERENCE));
  }
  return reasons;
}

/** What a play means where nobody's limit can be held against it; a reading of none is what a sound joint shows. */
function playReasons(reading: Summary, shown: string, { position, confidence }: PlaceContext): Reason[] {
  const limits = playLimits(position.kind);
  if (limits.length > 0 && reading.value <= 0) return [seenReason("play", "no play found", 0)];
  return limits.map((limit) =>
    limitReason("play", shown, reading, { ...limit, words: `${limit.says}, ${limit.whose}` }, confidence),
  );
}

/** Something seen by eye or hand. */
export const seenReason = (about: Reason["about"], text: string, grade: Grade): Reason => ({
  about,
  text,
  grade,
  closeToCall: false,
  judgement: null,
  towards: null,
  limit: null,
});

/** A limit with the words it is written in. */
export type WrittenLimit = OwnedLimits & { readonly words: string };

/** A reading held against a limit: the grade beyond it, "watch" where it is too close to call. */
export function limitReason(
  about: ReasonSubject,
  shown: string,
  reading: Reading,
  { words, ...limit }: WrittenLimit,
  confidence: number,
): Reason {
  const judgement = judgeAgainstLimit(reading, limit, confidence);
  const beyond = judgement.decision === "beyond";
  const close = judgement.decision === "too close to call";
  const grade: Grade = "gradeBeyond" in judgement ? (beyond ? judgement.gradeBeyond : close ? 1 : 0) : 0;
  const apart =
    judgement.decision === null
      ? ` set for ${judgement.other}: taken ${judgement.reading}, so it is not held against it`
      : "";
  const towards =
    limit.lower !== null && reading.value < limit.lower
      ? "less"
      : limit.upper !== null && reading.value > limit.upper
        ? "more"
        : null;
  return { about, text: `${shown}, ${words}${apart}`, grade, closeToCall: close, judgement, towards, limit: words };
}

/** A reading without a limit on file, and what is on file instead. */
export function notOnFile(about: ReasonSubject, shown: string, onFile: string | null): Reason {
  const why = onFile ?? "limit not on file";
  return {
    about,
    text: `${shown}, ${why}`,
    grade: 0,
    closeToCall: false,
    judgement: { against: "limit", decision: null, why },
    towards: null,
    limit: null,
  };
}

/** A difference counts only where it is beyond what two sides, or one and its past, may differ by. */
const differenceReason = (
  about: QuantityName,
  text: string,
  judgement: Judgement | NotComparable,
  grade: Grade,
): Reason => ({
  about,
  text,
  grade: judgement.decision === "beyond" ? grade : 0,
  closeToCall: false,
  judgement,
  towards: towardsOf(judgement),
  limit: null,
});

/** On which side of its twin or its past a reading lies. */
function towardsOf(judgement: Judgement | NotComparable): Reason["towards"] {
  if (judgement.decision === null || judgement.against === "limit") return null;
  const by = judgement.against === "twin" ? judgement.difference : judgement.change;
  return by < 0 ? "less" : by > 0 ? "more" : null;
}

/** Digits past the usual ones that somebody may have read off a finer instrument; more of them were computed, not read. */
const FINER = 2;

/** A value without its unit, with the usual decimals and never fewer than were typed: "353", "-1.20", "2.05". */
export function formatReading(quantity: QuantityName, value: number): string {
  const { factor, decimals } = quantityForms[quantity];
  const written = writtenDecimals(value * factor);
  return formatNumber(value * factor, written > decimals && written <= decimals + FINER ? written : decimals);
}

/** A value in the unit it is shown in: "353 mm", "-1.20°". */
export function shownValue(quantity: QuantityName, value: number): string {
  const form = quantityForms[quantity];
  return `${formatReading(quantity, value)}${form.unit === "°" ? "°" : form.unit ? ` ${form.unit}` : ""}`;
}

/** "limit 3.2 mm, general practice": never without whose it is. */
function limitText(limit: Limit | SaidLimit): string {
  const value = (v: number): string => shownValue(limit.quantity, v);
  const range =
    limit.lower !== null && limit.upper !== null
      ? `${value(limit.lower)} to ${value(limit.upper)}`
      : limit.lower !== null
        ? `at least ${value(limit.lower)}`
        : value(limit.upper ?? 0);
  return `limit ${range}, ${whoseWords(limit)}`;
}
