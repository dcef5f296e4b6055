import { computeLead, type Observation, type Sign, type SuspectModel } from "./suspects.ts";

/** How far one reading of a look can be trusted for one cause. */
export interface Reliability {
  /** Chance that it shows where the cause is there. */
  readonly sensitivity: number;
  /** Chance that it does not show where nothing is there. */
  readonly specificity: number;
}

/**
 * What a look shows, as a sign: with one cause alone there it shows with that cause's sensitivity, with none of them with
 * one less the specificity. A sensitivity below that is taken as equal to it: the look says nothing of this cause.
 */
export function signOfLook(id: string, specificity: number, sensitivities: ReadonlyMap<string, number>): Sign {
  const strength = (sensitivity: number): number =>
    specificity === 0 ? 0 : Math.max(0, 1 - (1 - sensitivity) / specificity);
  return {
    id,
    leak: 1 - specificity,
    strengths: new Map([...sensitivities].map(([cause, s]) => [cause, strength(s)])),
  };
}

/** One act of looking: how long it takes and the signs it shows, each there or not. */
export interface PlannedLook {
  readonly id: string;
  readonly minutes: number;
  /** Done first whatever the arithmetic says. */
  readonly safety: boolean;
  readonly signs: readonly string[];
}

export interface StopRule {
  /** Settled: the leading cure is this sure. */
  readonly settledAt: number;
  /** A look that settles nothing is worth doing where it lifts the leading figure by this much on average. */
  readonly leastGain: number;
}

/** Invented; a workshop sets its own. */
export const usualStopRule: StopRule = { settledAt: 0.9, leastGain: 0.01 };

export interface RankedLook {
  readonly id: string;
  readonly minutes: number;
  readonly safety: boolean;
  /** Chance that after it the leading cure is as sure as the rule asks. */
  readonly settles: number;
  readonly settlesPerMinute: number;
  /** By how much it lifts the leading figure on average. */
  readonly gain: number;
}

export interface NextLooks {
  /** The best first: safety, then chance of settling per minute, then gain per minute. */
  readonly looks: readonly RankedLook[];
  /**
   * Why to stop looking, or null: "settled"; "nothing-left", no look is open; "no-gain", none would settle it or lift the
   * leading figure enough. Open safety looks are always still to be done.
   */
  readonly stop: "settled" | "nothing-left" | "no-gain" | null;
  /** The leading figure as it stands. */
  readonly lead: number;
}

/** Signs one look may show at once: every combination of them is worked through (invented bound). */
const MOST_SHOWN = 10;
/** A chance nobody could tell from certainty by arithmetic alone. */
const LEAST_CHANGE = 1e-12;

function rankLook(
  model: SuspectModel,
  seen: Observation,
  look: PlannedLook,
  now: { probability: number; lead: number },
  rule: StopRule,
): RankedLook {
  const open = look.signs.filter((s) => ![...seen.complaint, ...seen.present, ...seen.absent].includes(s));
  if (open.length > MOST_SHOWN) throw new Error(`${look.id} shows more than ${MOST_SHOWN} signs`);
  let settles = 0;
  let expected = 0;
  for (let outcome = 0; outcome < 2 ** open.length; outcome++) {
    const shown = open.filter((_, i) => outcome & (1 << i));
    const not = open.filter((_, i) => !(outcome & (1 << i)));
    const then = computeLead(model, {
      ...seen,
      present: [...seen.present, ...shown],
      absent: [...seen.absent, ...not],
    });
    const chance = then.probability / now.probability;
    expected += chance * then.lead;
    if (then.lead >= rule.settledAt) settles += chance;
  }
  const { id, minutes, safety } = look;
  return { id, minutes, safety, settles, settlesPerMinute: settles / minutes, gain: Math.max(0, expected - now.lead) };
}

/**
 * Open looks in the order in which to do them, with the stop rule. A look is open while one of its signs is not known;
 * minutes are above nought. What was observed must be possible. Looks are weighed one at a time, not in combination.
 */
export function rankLooks(
  model: SuspectModel,
  seen: Observation,
  looks: readonly PlannedLook[],
  rule: StopRule = usualStopRule,
): NextLooks {
  const known = new Set([...seen.complaint, ...seen.present, ...seen.absent]);
  const open = looks.filter((look) => look.signs.some((s) => !known.has(s)));
  const now = computeLead(model, seen);
  const ranked = open
    .map((look) => rankLook(model, seen, look, now, rule))
    .sort(
      (a, b) =>
        Number(b.safety) - Number(a.safety) ||
        b.settlesPerMinute - a.settlesPerMinute ||
        b.gain / b.minutes - a.gain / a.minutes,
    );
  const useful = ranked.some((l) => l.settles > LEAST_CHANGE || l.gain >= rule.leastGain);
  const reason =
    now.lead >= rule.settledAt ? "settled" : open.length === 0 ? "nothing-left" : useful ? null : "no-gain";
  return { looks: ranked, stop: ranked.some((l) => l.safety) ? null : reason, lead: now.lead };
}
