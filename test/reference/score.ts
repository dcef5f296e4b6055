/** How a difference is held against its tolerance. */
export type Tolerance =
  | { readonly kind: "absolute"; readonly most: number }
  /** Difference over the size of the reference value. */
  | { readonly kind: "relative"; readonly most: number }
  /** Difference over the size of the reference value, or over 1 where that is larger. */
  | { readonly kind: "relative-above-one"; readonly most: number }
  /** Answers that are the same or not: how many are not. */
  | { readonly kind: "identical"; readonly most: 0 };

/** One line of the verification table. */
export interface Row {
  readonly check: string;
  readonly source: string;
  readonly quantity: string;
  readonly cases: number;
  /** Largest difference, measured as the tolerance is. */
  readonly worst: number;
  readonly tolerance: Tolerance;
  /** Agreeing digits of the worst case; null where answers are the same or not, and where the value is nought. */
  readonly digits: number | null;
}

interface Entry {
  readonly tolerance: Tolerance;
  readonly pairs: { readonly got: number; readonly want: number }[];
}

export const absolute = (most: number): Tolerance => ({ kind: "absolute", most });
export const relative = (most: number): Tolerance => ({ kind: "relative", most });
export const relativeAboveOne = (most: number): Tolerance => ({ kind: "relative-above-one", most });
const identical: Tolerance = { kind: "identical", most: 0 };

/** Collects differences from a reference, quantity by quantity, into rows. */
export class Score {
  private readonly entries = new Map<string, Entry>();

  constructor(
    private readonly check: string,
    private readonly source: string,
  ) {}

  /** Notes one figure; anything but a finite number counts as infinitely far off. */
  compare(quantity: string, got: unknown, want: number, tolerance: Tolerance): void {
    this.entry(quantity, tolerance).pairs.push({ got: typeof got === "number" ? got : Number.NaN, want });
  }

  /** Notes the components of a vector as one quantity. */
  compareAll(quantity: string, got: unknown, want: readonly number[], tolerance: Tolerance): void {
    const list: readonly unknown[] = Array.isArray(got) ? got : [];
    want.forEach((w, i) => {
      this.compare(quantity, list[i], w, tolerance);
    });
  }

  /** Notes an answer that must be the same, not near. */
  agree(quantity: string, same: boolean): void {
    this.entry(quantity, identical).pairs.push({ got: same ? 0 : 1, want: 0 });
  }

  rows(): readonly Row[] {
    return [...this.entries].map(([quantity, { tolerance, pairs }]) => ({
      check: this.check,
      source: this.source,
      quantity,
      cases: pairs.length,
      worst:
        tolerance.kind === "identical"
          ? pairs.reduce((sum, p) => sum + p.got, 0)
          : pairs.reduce((most, p) => Math.max(most, measure(p.got, p.want, tolerance)), 0),
      tolerance,
      digits: tolerance.kind === "identical" ? null : countDigits(pairs, tolerance),
    }));
  }

  private entry(quantity: string, tolerance: Tolerance): Entry {
    const known = this.entries.get(quantity);
    if (known) return known;
    const made: Entry = { tolerance, pairs: [] };
    this.entries.set(quantity, made);
    return made;
  }
}

function measure(got: number, want: number, tolerance: Tolerance): number {
  const difference = Math.abs(got - want);
  if (difference === 0) return 0;
  if (!Number.isFinite(difference)) return Number.POSITIVE_INFINITY;
  if (tolerance.kind === "relative") return difference / Math.abs(want);
  return tolerance.kind === "relative-above-one" ? difference / Math.max(1, Math.abs(want)) : difference;
}

/**
 * Least agreeing digits over the cases: -log10 of the relative difference. Where the tolerance is absolute, a value
 * smaller than the median one counts as if it were that large; null where the values themselves are nought.
 */
function countDigits(pairs: Entry["pairs"], tolerance: Tolerance): number | null {
  const sizes = pairs.map((p) => Math.abs(p.want)).sort((a, b) => a - b);
  const usual = sizes[Math.floor(sizes.length / 2)] ?? 0;
  const absolutely = tolerance.kind === "absolute";
  if (absolutely && usual <= tolerance.most) return null;
  return pairs.reduce((least, { got, want }) => {
    const scale = Math.max(Math.abs(want), usual);
    const off = absolutely ? Math.abs(got - want) / scale : measure(got, want, tolerance);
    return off === 0 ? least : Math.min(least, Number.isFinite(off) ? Math.max(0, -Math.log10(off)) : 0);
  }, Number.POSITIVE_INFINITY);
}

/** Whole digits, never more than measured, never more than 12. */
export function wholeDigits(row: Row): number | null {
  return row.digits === null ? null : Math.min(12, Math.floor(row.digits));
}

/** Held back from what is stated, so that another machine's rounding does not fall below it. */
const IN_HAND = 0.3;

/** Digits as the page states them. */
export function statedDigits(row: Row): number | null {
  return row.digits === null ? null : Math.min(12, Math.max(0, Math.floor(row.digits - IN_HAND)));
}
