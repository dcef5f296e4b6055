/** Middle of an odd number of figures. */
export function median(list: readonly number[]): number {
  return [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)] as number;
}

/** Median over `rounds` of the processor time of one call, in milliseconds; `before` calls before them are not counted. */
export function medianMilliseconds(rounds: number, call: () => void, before = 1): number {
  for (let i = 0; i < before; i++) call();
  return median(
    Array.from({ length: rounds }, () => {
      const before = process.cpuUsage();
      call();
      const { user, system } = process.cpuUsage(before);
      return (user + system) / 1000;
    }),
  );
}

/** Rounds that each figure is the median of. */
export const ROUNDS = 15;

/** A line of the table: what was timed, the figure, what it is held against, the goal and whether it is met. */
export interface TimingRow {
  readonly what: string;
  readonly figure: string;
  readonly goal: string;
  readonly met: boolean | null;
}

/** Three significant digits with a space between thousands. */
export function formatFigure(x: number): string {
  const rounded = Number(x.toPrecision(3));
  return rounded >= 1000 ? String(rounded).replace(/\B(?=(\d{3})+(?!\d))/g, " ") : String(rounded);
}
