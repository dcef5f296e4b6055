import type { CurveLine } from "#casework";

/** How far an axis reaches for its lines, and the band that goes on beyond it. */
export interface Reach {
  readonly low: number;
  readonly high: number;
  /** Ends of the widest band that lies beyond the axis, per side null where it does not; null where every band fits. */
  readonly beyond: {
    readonly state: CurveLine["state"];
    readonly low: number | null;
    readonly high: number | null;
  } | null;
}

/** A band is shown whole while it adds no more than so many times what the lines themselves reach; a wider one is cut sooner. */
const MOST_WHOLE = 4.5;
const CUT_AT = 3;
/** Lines that hardly move are given this much all the same, in their own unit (degrees). */
const LEAST_SPAN = 0.1;
/** Steps between two entries when a band is cut at the frame. */
const STEPS = 8;

const finite = (values: readonly number[]): readonly number[] => values.filter((value) => Number.isFinite(value));

/**
 * The reach of an axis: the lines decide, their bands are added as far as they are not far wider than the lines.
 * @param withZero the axis holds zero too
 */
export function reachOfLines(lines: readonly CurveLine[], withZero: boolean): Reach {
  const values = finite([...lines.flatMap((line) => line.values), ...(withZero ? [0] : [])]);
  if (values.length === 0) return { low: 0, high: 1, beyond: null };
  const [from, to] = [Math.min(...values), Math.max(...values)];
  const span = Math.max(to - from, LEAST_SPAN);
  const ends = lines.map((line) => ({
    state: line.state,
    low: Math.min(from, ...finite(line.low)),
    high: Math.max(to, ...finite(line.high)),
  }));
  const furthest = {
    low: Math.min(from, ...ends.map((end) => end.low)),
    high: Math.max(to, ...ends.map((end) => end.high)),
  };
  const low = from - furthest.low > MOST_WHOLE * span ? from - CUT_AT * span : furthest.low;
  const high = furthest.high - to > MOST_WHOLE * span ? to + CUT_AT * span : furthest.high;
  const widest = ends.toSorted((a, b) => b.high - b.low - (a.high - a.low))[0];
  if (widest === undefined || (widest.low >= low && widest.high <= high)) return { low, high, beyond: null };
  const beyond = {
    state: widest.state,
    low: widest.low < low ? widest.low : null,
    high: widest.high > high ? widest.high : null,
  };
  return { low, high, beyond };
}

/** A band cut at the ends of an axis, with entries between the given ones so that the cut lies where the edge crosses it. */
export function clipBand(
  line: CurveLine,
  rises: readonly number[],
  { low, high }: { readonly low: number; readonly high: number },
): { readonly at: readonly number[]; readonly low: readonly number[]; readonly high: readonly number[] } {
  const between = (values: readonly number[]): readonly number[] =>
    values.flatMap((value, i) => {
      const next = values[i + 1];
      if (next === undefined) return [value];
      return Array.from({ length: STEPS }, (_, k) => value + ((next - value) * k) / STEPS);
    });
  const cut = (values: readonly number[]) => between(values).map((value) => Math.max(low, Math.min(high, value)));
  return { at: between(rises), low: cut(line.low), high: cut(line.high) };
}
