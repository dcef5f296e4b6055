import type { FindingKind, Limit, QuantityName } from "#vehicle";
import { PLAY_ABOUT_TO_PART } from "./signs.ts";

/** A limit with words of its own for whose it is. */
export interface SaidLimit extends Limit {
  readonly whose: string;
}

/** A limit beyond which a thing is dangerous by itself, whatever else is on file of it. */
export interface DangerLimit extends SaidLimit {
  readonly byItself: true;
}

const mm = (value: number): number => value / 1000;

const danger = (
  place: string,
  quantity: QuantityName,
  ends: Pick<Limit, "lower" | "upper">,
  grade: 3 | 4,
  said: Pick<DangerLimit, "owner" | "source" | "whose">,
): DangerLimit => ({ place, axle: null, quantity, ...ends, loadState: null, grade, byItself: true, ...said });

const practice = { owner: "practice", source: "common practice, no source", whose: "general practice" } as const;
const memory = { owner: "memory", source: "from memory", whose: "from memory" } as const;
/** Source: tread-law of docs/sources.md. */
const law = {
  owner: "law",
  source: "tread-law: the law of several places as read in public guidance; that of this place counts",
  whose: "the law of many places; that of this place counts",
} as const;

/** What wears away: how little of it asks for repair first, and how little forbids driving. Lengths in metres. */
const wornAway: readonly DangerLimit[] = [
  danger("pads", "pad-thickness", { lower: mm(2), upper: null }, 3, practice),
  danger("pads", "pad-thickness", { lower: mm(1), upper: null }, 4, memory),
  danger("tyre", "tread", { lower: mm(1.6), upper: null }, 3, law),
];

const counts = (limit: Limit): boolean => limit.owner === "maker" || limit.owner === "law";

/**
 * Limits of danger for a quantity at a kind of place, metres; a maker's or a legal limit on file (`own`) of the same or a
 * worse grade counts before them.
 */
export const dangerLimits = (
  kind: FindingKind,
  quantity: QuantityName,
  own: readonly Limit[],
): readonly DangerLimit[] =>
  wornAway.filter(
    (limit) =>
      limit.place === kind &&
      limit.quantity === quantity &&
      !own.some((o) => counts(o) && o.grade >= limit.grade && (o.lower !== null) === (limit.lower !== null)),
  );

/** A limit of play with what lies beyond it. */
interface PlayLimit extends DangerLimit {
  readonly says: string;
}

/**
 * What play means where no maker's or legal figure can be held against it, metres (workshop-scale, from memory): any play
 * of a ball joint or a free rubber joint asks for repair first, a ball joint may part from 2 mm on; a link of the
 * anti-roll bar is graded as play felt there is. Empty for kinds that have play when they are sound, as bearings do.
 */
export function playLimits(kind: FindingKind): readonly PlayLimit[] {
  const any = (grade: 2 | 3): PlayLimit => ({
    ...danger(kind, "play", { lower: null, upper: 0 }, 3, memory),
    grade,
    says: "a sound one has none",
  });
  if (kind === "bar-link") return [any(2)];
  if (kind === "bush" || kind === "hydraulic-bush") return [any(3)];
  if (kind !== "ball-joint") return [];
  const parting = danger(kind, "play", { lower: null, upper: PLAY_ABOUT_TO_PART }, 4, memory);
  return [any(3), { ...parting, says: "from 2 mm on it may part" }];
}
