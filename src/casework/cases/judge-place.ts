import {
  type Judgement,
  judgeAgainstLimit,
  judgeAgainstPast,
  judgeAgainstTwin,
  type NotComparable,
  type Reading,
} from "#engines/metrology";
import type { Grade, Limit, Owner, Position } from "#vehicle";
import { formatNumber } from "../fault/format-figure.ts";
import type { CountedReading, PlaceLooks } from "./place-looks.ts";
import { gradeOfSign, signWords } from "./signs.ts";
import { quantityForms } from "./standard-readings.ts";

/** One thing that speaks for a grade. */
export interface Reason {
  readonly text: string;
  readonly grade: Grade;
  readonly closeToCall: boolean;
  readonly judgement: Judgement | NotComparable | null;
}

/** What follows from everything seen at one place. */
export interface PlaceFinding {
  readonly place: string;
  readonly label: string;
  readonly axle: Position["axle"];
  readonly side: Position["side"];
  readonly kind: Position["kind"];
  /** null: nobody has looked. */
  readonly grade: Grade | null;
  readonly closeToCall: boolean;
  /** What was found, in a few words; "nothing seen" where that is it. */
  readonly found: string;
  readonly reasons: readonly Reason[];
  /** The limit that decided, as it is written: "limit 22.0 mm, by its maker"; null without one. */
  readonly limitWords: string | null;
  readonly howSure: string;
  readonly looks: PlaceLooks | null;
}

/** How far two sides, or one side and its past, may differ before it counts (SI; from memory, working figures). */
const ALLOWED: Readonly<Partial<Record<CountedReading["quantity"], { readonly twin: number; readonly past: number }>>> =
  {
    "ride-height": { twin: 0.01, past: 0.01 },
    pressure: { twin: 0.2e5, past: 0.5e5 },
    tread: { twin: 0.002, past: 0.004 },
    "pad-thickness": { twin: 0.002, past: 0.008 },
    thickness: { twin: 0.0005, past: 0.002 },
    camber: { twin: (0.5 * Math.PI) / 180, past: (0.4 * Math.PI) / 180 },
    toe: { twin: (0.2 * Math.PI) / 180, past: (0.15 * Math.PI) / 180 },
    "lost-travel": { twin: 0.0015, past: 0.002 },
    play: { twin: 0.0003, past: 0.0003 },
  };

/** A difference to the twin or to the past alone never asks for more than to watch. */
const GRADE_OF_DIFFERENCE: Grade = 1;

export const ownerWords: Readonly<Record<Owner, string>> = {
  maker: "by its maker",
  law: "by law",
  workshop: "this workshop's",
  practice: "general practice",
  memory: "from memory",
};

export interface PlaceContext {
  readonly position: Position;
  readonly limits: readonly Limit[];
  readonly twin: PlaceLooks | null;
  /** The same place at the visit before. */
  readonly past: PlaceLooks | null;
  readonly confidence: number;
}

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
      found: looks?.notTaken ? "not taken" : looks ? "cannot be reached" : "not looked at",
      reasons: [],
      limitWords: null,
      howSure: "",
    };
  const signs = looks.signs.flatMap((sign): Reason[] => {
    const grade = gradeOfSign(position.kind, sign);
    return grade === null ? [] : [{ text: signWords[sign], grade, closeToCall: false, judgement: null }];
  });
  const readings = summarise(looks.readings).flatMap((r) => judgeReading(r, context));
  const reasons = [...signs, ...readings].sort((a, b) => b.grade - a.grade);
  const worst = reasons[0];
  const grade: Grade = worst?.grade ?? 0;
  const deciding = reasons.find(
    (r) => r.judgement?.against === "limit" && r.judgement.decision !== null && r.grade === grade,
  );
  return {
    ...base,
    grade,
    closeToCall:
      reasons.some((r) => r.closeToCall) && !reasons.some((r) => !r.closeToCall && r.grade >= grade && r.grade > 0),
    found: foundWords(looks, signs),
    reasons,
    limitWords: deciding ? limitWordsOf(deciding.judgement, looks, context) : null,
    howSure: howSureOf(worst),
    looks,
  };
}

interface Summary extends Reading {
  readonly quantity: CountedReading["quantity"];
  readonly points: number;
}

/** Several points of one quantity in one state of load: the smallest counts, and for discs the spread is a quantity of its own. */
function summarise(readings: readonly CountedReading[]): Summary[] {
  const alike = new Map<string, { readonly quantity: CountedReading["quantity"]; readonly all: CountedReading[] }>();
  for (const r of readings) {
    const key = `${r.quantity}/${r.loadState ?? ""}`;
    const known = alike.get(key) ?? { quantity: r.quantity, all: [] };
    known.all.push(r);
    alike.set(key, known);
  }
  return [...alike.values()].flatMap(({ quantity, all }) => {
    const least = all.reduce((a, b) => (b.value < a.value ? b : a));
    const most = all.reduce((a, b) => (b.value > a.value ? b : a));
    const out: Summary[] = [
      { quantity, value: least.value, u: least.u, loadState: least.loadState, points: all.length },
    ];
    if (quantity === "thickness" && all.length >= 4)
      out.push({
        quantity: "thickness-variation",
        value: most.value - least.value,
        u: Math.hypot(most.u, least.u),
        loadState: null,
        points: all.length,
      });
    return out;
  });
}

/** The same quantity at another place or time, in the same state of load where it was taken in several. */
function sameReading(looks: PlaceLooks, reading: Summary): Summary | undefined {
  const same = summarise(looks.readings).filter((r) => r.quantity === reading.quantity);
  return same.find((r) => r.loadState === reading.loadState) ?? same[0];
}

function limitsFor(quantity: string, context: PlaceContext): readonly Limit[] {
  const { position } = context;
  const own = position.detail ? `${position.item}/${position.detail}` : position.item;
  return context.limits.filter(
    (l) =>
      l.quantity === quantity &&
      (l.axle === null || l.axle === position.axle) &&
      (l.place === own || l.place === position.item || l.place === position.kind),
  );
}

function judgeReading(reading: Summary, context: PlaceContext): Reason[] {
  const form = quantityForms[reading.quantity];
  const shown = `${form.label.toLowerCase()} ${shownValue(reading)}`;
  const reasons: Reason[] = limitsFor(reading.quantity, context).map((limit) => {
    const judgement = judgeAgainstLimit(
      reading,
      {
        lower: limit.lower,
        upper: limit.upper,
        owner: limit.owner,
        source: limit.source,
        loadState: limit.loadState,
        grade: limit.grade,
      },
      context.confidence,
    );
    const beyond = judgement.decision === "beyond";
    const close = judgement.decision === "too close to call";
    const grade: Grade = "gradeBeyond" in judgement ? (beyond ? judgement.gradeBeyond : close ? 1 : 0) : 0;
    const apart =
      judgement.decision === null
        ? ` set for ${judgement.other}: taken ${judgement.reading}, so it is not held against it`
        : "";
    return { text: `${shown}, ${limitText(limit)}${apart}`, grade, closeToCall: close, judgement };
  });
  const allowed = ALLOWED[reading.quantity];
  if (!allowed) return reasons;
  const other = context.twin && sameReading(context.twin, reading);
  if (other) {
    const judgement = judgeAgainstTwin(reading, other, allowed.twin, context.confidence);
    reasons.push(differenceReason(`${shown}, ${shownValue(other)} on the other side`, judgement));
  }
  const before = context.past && sameReading(context.past, reading);
  if (before) {
    const judgement = judgeAgainstPast(reading, before, allowed.past, context.confidence);
    reasons.push(differenceReason(`${shown}, ${shownValue(before)} last time`, judgement));
  }
  return reasons;
}

/** A difference counts only where it is beyond what two sides, or one and its past, may differ by. */
const differenceReason = (text: string, judgement: Judgement | NotComparable): Reason => ({
  text,
  grade: judgement.decision === "beyond" ? GRADE_OF_DIFFERENCE : 0,
  closeToCall: false,
  judgement,
});

function shownValue(r: Pick<Summary, "quantity" | "value">): string {
  const form = quantityForms[r.quantity];
  return `${formatNumber(r.value * form.factor, form.decimals)}${form.unit === "°" ? "°" : form.unit ? ` ${form.unit}` : ""}`;
}

/** "limit 3.2 mm, general practice": never without whose it is. */
function limitText(limit: Limit): string {
  const value = (v: number): string => shownValue({ quantity: limit.quantity, value: v });
  const range =
    limit.lower !== null && limit.upper !== null
      ? `${value(limit.lower)} to ${value(limit.upper)}`
      : limit.lower !== null
        ? `at least ${value(limit.lower)}`
        : value(limit.upper ?? 0);
  return `limit ${range}, ${ownerWords[limit.owner]}`;
}

function limitWordsOf(judgement: Reason["judgement"], looks: PlaceLooks, context: PlaceContext): string | null {
  if (judgement?.against !== "limit" || judgement.decision === null) return null;
  for (const r of summarise(looks.readings)) {
    const limit = limitsFor(r.quantity, context).find(
      (l) => l.source === judgement.source && l.owner === judgement.owner,
    );
    if (limit) return limitText(limit);
  }
  return null;
}

function foundWords(looks: PlaceLooks, signs: readonly Reason[]): string {
  const parts = [
    ...signs.map((s) => s.text),
    ...summarise(looks.readings).map((r) => `${quantityForms[r.quantity].label.toLowerCase()} ${shownValue(r)}`),
  ];
  return parts.length === 0 ? "nothing seen" : parts.join(", ");
}

function howSureOf(worst: Reason | undefined): string {
  if (!worst) return "Looked at; nothing speaks against it.";
  const { judgement } = worst;
  if (!judgement) return "Seen by eye or hand.";
  if (judgement.decision === null) return "Not comparable: taken in another state of load.";
  const chance = judgement.probabilityWithin;
  const share = (p: number): string =>
    p > 0.999 ? "more than 99.9 %" : `${formatNumber(p * 100, p > 0.99 ? 1 : 0)} %`;
  if (judgement.decision === "beyond") return `Beyond the limit with ${share(1 - chance)}.`;
  if (judgement.decision === "within") return `Within with ${share(chance)}.`;
  return `Too close to call: within with ${share(chance)}.`;
}
