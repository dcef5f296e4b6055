import { scaleLinear } from "d3-scale";

/** A figure with a true minus sign and so many decimals; "0" for nothing. */
export function formatSigned(value: number, decimals: number): string {
  const text = Math.abs(value).toFixed(decimals);
  return Number(text) === 0 ? Number(0).toFixed(decimals) : `${value < 0 ? "−" : ""}${text}`;
}

export interface Axis {
  readonly low: number;
  readonly high: number;
  readonly ticks: readonly number[];
  /** Words of the ticks, all with the same decimals. */
  readonly words: readonly string[];
}

/** An axis that holds all values with a little room at both ends, and round ticks inside it. */
export function niceAxis(values: readonly number[], count: number): Axis {
  const finite = values.filter((value) => Number.isFinite(value));
  const [min, max] = [Math.min(...finite, Number.POSITIVE_INFINITY), Math.max(...finite, Number.NEGATIVE_INFINITY)];
  const [from, to] = Number.isFinite(min) && Number.isFinite(max) ? [min, max] : [0, 1];
  const pad = to - from < 1e-9 ? 0.5 : (to - from) * 0.05;
  const [low, high] = [from - pad, to + pad];
  const ticks = scaleLinear().domain([low, high]).ticks(count);
  const step = (ticks[1] ?? 1) - (ticks[0] ?? 0);
  const decimals = Math.max(0, -Math.floor(Math.log10(Math.abs(step)) + 1e-9));
  return { low, high, ticks, words: ticks.map((tick) => (tick === 0 ? "0" : formatSigned(tick, decimals))) };
}
