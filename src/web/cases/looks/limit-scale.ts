/** What stands on the bar of a reading, in the unit it is shown in. */
export interface OnBar {
  readonly limits: readonly number[];
  /** null: nothing is read yet. */
  readonly reading: { readonly value: number; readonly expanded: number } | null;
  /** The other side; null where it was not read. */
  readonly twin: number | null;
}

/** A stretch of a quantity with round figures on it. */
export interface BarScale {
  readonly from: number;
  readonly to: number;
  readonly ticks: readonly number[];
  /** Share of the bar, 0 to 1, held inside. */
  readonly share: (value: number) => number;
}

/** Room beside what stands outermost, of the span between. */
const ROOM = 0.35;
const MOST_STEPS = 5;
const MANTISSAS = [1, 2, 5, 10];

/** The least round step that divides a stretch into at most five. */
const roundStep = (span: number): number => {
  const rough = span / MOST_STEPS;
  const power = 10 ** Math.floor(Math.log10(rough));
  return power * (MANTISSAS.find((m) => m * power >= rough * (1 - 1e-9)) ?? 10);
};

/** A bar that holds limits, reading and other side; it begins at nought where that is not far off. null: nothing to hold. */
export const barScale = ({ limits, reading, twin }: OnBar): BarScale | null => {
  const held = [
    ...limits,
    ...(twin === null ? [] : [twin]),
    ...(reading === null ? [] : [reading.value - reading.expanded, reading.value + reading.expanded]),
  ];
  if (held.length === 0) return null;
  const [low, high] = [Math.min(...held), Math.max(...held)];
  const fromNought = low >= 0 && low < 2 * (high - low) + 0.5 * high;
  const span = high - (fromNought ? 0 : low) || Math.max(Math.abs(high), 1);
  const step = roundStep(span * (1 + (fromNought ? ROOM : 2 * ROOM)));
  const from = fromNought ? 0 : Math.floor((low - ROOM * span) / step) * step;
  const to = Math.ceil((high + ROOM * span) / step) * step;
  const count = Math.round((to - from) / step);
  return {
    from,
    to,
    ticks: Array.from({ length: count + 1 }, (_, i) => from + i * step),
    share: (value) => Math.min(1, Math.max(0, (value - from) / (to - from))),
  };
};
