import { type CholeskyFactor, factoriseCholesky, solveLower, solveUpper } from "#numeric";
import type { ReadingRow } from "./corner-readings.ts";

/** Of a vector no more than this is left, relative, where all of it is a setting: rounding. */
const ALL_SETTING = 1e-6;

/**
 * The readings measured by how the prior foresees them, S = J Jᵀ + R, with the settings of camber and toe free: what a
 * setting explains says nothing of the points. With A what each reading has of the settings, vectors are taken to L⁻¹ v, S =
 * L Lᵀ, less their part along L⁻¹ A.
 */
export class ReadingSpace {
  private constructor(
    private readonly factor: CholeskyFactor,
    private readonly settings: readonly Float64Array[],
  ) {}

  /** The space of these readings; null where a reading is foreseen exactly and read exactly. */
  static of(rows: readonly ReadingRow[]): ReadingSpace | null {
    const factor = factoriseCholesky(
      rows.map((a, i) => rows.map((b, j) => dot(a.derivatives, b.derivatives) + (i === j ? a.u ** 2 : 0))),
    );
    if (!factor) return null;
    const settings: Float64Array[] = [];
    for (const kind of ["camber", "toe"] as const) {
      if (!rows.some(({ name }) => name.kind === kind)) continue;
      const column = solveLower(
        factor,
        rows.map(({ name }) => (name.kind === kind ? 1 : 0)),
      );
      const own = without(column, settings);
      const length = Math.sqrt(dot(own, own));
      settings.push(own.map((x) => x / length));
    }
    return new ReadingSpace(factor, settings);
  }

  /** A vector of the readings in standard deviations, without what settings explain; its products are v P w. */
  whiten(v: ArrayLike<number>): Float64Array {
    return without(solveLower(this.factor, v), this.settings);
  }

  /** P v, with P = S⁻¹ - S⁻¹ A (Aᵀ S⁻¹ A)⁻¹ Aᵀ S⁻¹. */
  weigh(v: ArrayLike<number>): Float64Array {
    return solveUpper(this.factor, this.whiten(v));
  }

  /** Diagonal element of P; 0 where the reading serves a setting alone. */
  diagonal(i: number): number {
    const unit = new Float64Array(this.factor.length);
    unit[i] = 1;
    const all = solveLower(this.factor, unit);
    const left = without(all, this.settings);
    return dot(left, left) > ALL_SETTING ** 2 * dot(all, all) ? dot(left, left) : 0;
  }
}

/** A vector less its parts along unit vectors at right angles to each other. */
function without(v: Float64Array, directions: readonly Float64Array[]): Float64Array {
  let left = v;
  for (const d of directions) {
    const part = dot(left, d);
    left = left.map((x, i) => x - part * (d[i] as number));
  }
  return left;
}

/** The sum of products of two vectors. */
export function dot(a: ArrayLike<number>, b: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * (b[i] as number);
  return sum;
}
