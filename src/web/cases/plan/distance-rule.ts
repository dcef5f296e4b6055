import type { PlanDocument } from "#casework";

/** A stretch of road ahead, as a plan draws it from left to right. */
export interface DistanceRule {
  readonly fromKm: number;
  readonly toKm: number;
  /** Share of the rule's length at a distance, 0 to 1, held inside. */
  readonly share: (km: number) => number;
  /** Round distances with room between their figures. */
  readonly ticks: readonly number[];
}

const STEPS = [500, 1000, 2000, 5000, 10_000, 20_000, 50_000, 100_000];
const MOST_TICKS = 9;

/** The rule of a plan: from its first visit to its horizon; `unitKm` is the unit its round figures are in, km. */
export const distanceRule = ({ visits, horizonKm }: PlanDocument, unitKm = 1): DistanceRule => {
  const fromKm = visits[0]?.odometerKm ?? 0;
  const toKm = Math.max(horizonKm, fromKm + 1000, ...visits.map((v) => v.odometerKm));
  const step = unitKm * (STEPS.find((s) => (toKm - fromKm) / (s * unitKm) <= MOST_TICKS) ?? 500_000);
  const ticks: number[] = [];
  for (let km = Math.ceil(fromKm / step) * step; km <= toKm; km += step) ticks.push(km);
  return {
    fromKm,
    toKm,
    share: (km) => Math.min(1, Math.max(0, (km - fromKm) / (toKm - fromKm))),
    ticks,
  };
};

/** Least width of a rule, and of a letter of a visit's name and day on it, px (measured at a width of 1024). */
const RULE_WIDTH = 222;
const LETTER_WIDTH = 7;
const LEAST_LETTERS = 11;

/** Row of each visit's name above the rule, 0 on top, so that none runs into the next; names in the order of their shares. */
export const nameRows = (names: readonly { readonly letters: number; readonly share: number }[]): readonly number[] => {
  const ends: number[] = [];
  return names.map(({ letters, share }) => {
    const from = share * RULE_WIDTH;
    const free = ends.findIndex((end) => end <= from);
    const row = free === -1 ? ends.length : free;
    ends[row] = from + LETTER_WIDTH * Math.max(LEAST_LETTERS, letters);
    return row;
  });
};
