/** A table over some variables of a network, which are numbered; the last variable of the scope turns fastest. */
export interface Factor {
  readonly scope: readonly number[];
  readonly values: Float64Array;
}

/** Number of states of every variable, by number. */
export type Sizes = readonly number[];

/** Number of entries of a table over these variables; may be infinite. */
export const entriesOver = (scope: readonly number[], sizes: Sizes): number =>
  scope.reduce((product, v) => product * (sizes[v] as number), 1);

/** A table of ones. */
export const makeOnes = (scope: readonly number[], sizes: Sizes): Factor => ({
  scope,
  values: new Float64Array(entriesOver(scope, sizes)).fill(1),
});

/** How far to step in a table over `scope` when each variable of `frame` moves on by one; 0 for variables it lacks. */
function stepsIn(scope: readonly number[], frame: readonly number[], sizes: Sizes): number[] {
  const steps = frame.map(() => 0);
  let step = 1;
  for (let i = scope.length - 1; i >= 0; i--) {
    steps[frame.indexOf(scope[i] as number)] = step;
    step *= sizes[scope[i] as number] as number;
  }
  return steps;
}

/** Calls `visit` with the entry of a table over `frame` and the matching entry of one over `scope`, for all of `frame`. */
function walk(
  frame: readonly number[],
  scope: readonly number[],
  sizes: Sizes,
  visit: (at: number, other: number) => void,
): void {
  const steps = stepsIn(scope, frame, sizes);
  const counts = frame.map((v) => sizes[v] as number);
  const digits = frame.map(() => 0);
  const total = entriesOver(frame, sizes);
  let other = 0;
  for (let at = 0; at < total; at++) {
    visit(at, other);
    for (let i = frame.length - 1; i >= 0; i--) {
      const step = steps[i] as number;
      const digit = (digits[i] as number) + 1;
      if (digit < (counts[i] as number)) {
        digits[i] = digit;
        other += step;
        break;
      }
      digits[i] = 0;
      other -= step * (digit - 1);
    }
  }
}

/** Multiplies a table by another whose variables it all has, in place. */
export function multiplyInto(table: Factor, by: Factor, sizes: Sizes): void {
  const { values } = table;
  walk(table.scope, by.scope, sizes, (at, other) => {
    values[at] = (values[at] as number) * (by.values[other] as number);
  });
}

/** Sums a table down to some of its variables. */
export function sumTo(scope: readonly number[], table: Factor, sizes: Sizes): Factor {
  const values = new Float64Array(entriesOver(scope, sizes));
  walk(table.scope, scope, sizes, (at, other) => {
    values[other] = (values[other] as number) + (table.values[at] as number);
  });
  return { scope, values };
}

/** The part of a table where some variables are in known states; those drop out of the scope. */
export function restrict(table: Factor, known: ReadonlyMap<number, number>, sizes: Sizes): Factor {
  const scope = table.scope.filter((v) => !known.has(v));
  if (scope.length === table.scope.length) return table;
  const fixed = table.scope.filter((v) => known.has(v));
  const wanted = fixed.reduce((code, v) => code * (sizes[v] as number) + (known.get(v) as number), 0);
  const states = new Float64Array(table.values.length);
  walk(table.scope, fixed, sizes, (at, state) => {
    states[at] = state;
  });
  const values = new Float64Array(entriesOver(scope, sizes));
  walk(table.scope, scope, sizes, (at, other) => {
    if (states[at] === wanted) values[other] = table.values[at] as number;
  });
  return { scope, values };
}

/** Scales a table by a power of two so that its largest entry lies in [0.5, 1); the power, or null where all is nought. */
export function scaleDown({ values }: Factor): number | null {
  const largest = values.reduce((most, v) => Math.max(most, v), 0);
  if (largest === 0) return null;
  const power = Math.floor(Math.log2(largest)) + 1;
  // Two steps: a power of two beyond 1023 has no double of its own.
  const half = Math.trunc(-power / 2);
  for (let i = 0; i < values.length; i++) values[i] = (values[i] as number) * 2 ** half * 2 ** (-power - half);
  return power;
}
