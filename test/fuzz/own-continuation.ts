import type { CornerGeometry } from "#engines/linkage";
import type { Vector } from "#numeric";

/**
 * A second way along the branch of a corner, made for the tests: unknown are the wheel centre and a quaternion, the
 * Jacobian is formed by central differences, the step is a midpoint one along the null direction with a Newton correction
 * across it. It shares nothing with the engine but the meaning of the geometry.
 */
type Unknown = readonly number[];

export type Reached = { readonly centre: Vector; readonly axis: Vector } | { readonly foldAt: number };

/** Length that makes a quaternion entry comparable with a metre. */
const ARM = 0.6;
const STEP = 0.006;
/** Steps are halved down to this length; height turns with its square at a fold. */
const LEAST_STEP = 1e-5;
const NUDGE = 1e-6;

const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const inner = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((s, x, i) => s + x * (b[i] as number), 0);
const times = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const plus = (a: Unknown, b: Unknown, factor: number): number[] => a.map((x, i) => x + factor * (b[i] as number));

/** v turned by the quaternion (entries 3 to 6 over ARM, scalar first), normalised. */
function turn(u: Unknown, v: Vector): Vector {
  const [w, x, y, z] = [3, 4, 5, 6].map((i) => (u[i] as number) / ARM) as [number, number, number, number];
  const n = w * w + x * x + y * y + z * z;
  const q: Vector = [x, y, z];
  const t = times(q, v);
  const tt = times(q, t);
  return [
    v[0] + (2 * (w * t[0] + tt[0])) / n,
    v[1] + (2 * (w * t[1] + tt[1])) / n,
    v[2] + (2 * (w * t[2] + tt[2])) / n,
  ];
}

/** The joints of a corner as six equations in seven unknowns (five joints and the length of the quaternion). */
class Branch {
  private readonly lengths: readonly number[];
  readonly start: Unknown;

  constructor(private readonly corner: CornerGeometry) {
    this.start = [...corner.wheel.centre, ARM, 0, 0, 0];
    this.lengths = corner.links.map((l) => Math.hypot(...minus(l.outer, l.inner)));
  }

  private place(u: Unknown, p: Vector): Vector {
    const r = turn(u, minus(p, this.corner.wheel.centre));
    return [(u[0] as number) + r[0], (u[1] as number) + r[1], (u[2] as number) + r[2]];
  }

  residuals(u: Unknown): number[] {
    const { links, strut, trailingArm } = this.corner;
    const out = links.map(
      (l, i) => Math.hypot(...minus(this.place(u, l.outer), l.inner)) - (this.lengths[i] as number),
    );
    if (strut) {
      // The top stays on the carried line: two components of the offset, in axes of the knuckle.
      const line = minus(strut.top, strut.axisPoint);
      const off = times(turn(u, line), minus(strut.top, this.place(u, strut.axisPoint)));
      const length = Math.hypot(...line);
      out.push(...acrossOf(line).map((e) => inner(turn(u, e), off) / length));
    }
    if (trailingArm) {
      const shift = minus(this.place(u, trailingArm.bush), trailingArm.bush);
      if (trailingArm.freeAxis) out.push(...acrossOf(trailingArm.freeAxis).map((e) => inner(e, shift)));
      else out.push(...shift);
    }
    const norm = Math.hypot(...u.slice(3));
    return [...out, norm - ARM];
  }

  jacobian(u: Unknown): number[][] {
    const columns = u.map((_, j) => {
      const ahead = this.residuals(u.map((x, i) => (i === j ? x + NUDGE : x)));
      const behind = this.residuals(u.map((x, i) => (i === j ? x - NUDGE : x)));
      return ahead.map((a, i) => (a - (behind[i] as number)) / (2 * NUDGE));
    });
    return (columns[0] as number[]).map((_, i) => columns.map((c) => c[i] as number));
  }

  /** Unit direction along the branch, continuing `before`. */
  tangent(u: Unknown, before: Unknown): number[] {
    const t = nullVector(this.jacobian(u));
    const sign = inner(t, before) < 0 ? -1 : 1;
    return t.map((x) => x * sign);
  }

  /** Back onto the joints across `along`, by Newton; null where it does not settle. */
  correct(u: Unknown, along: Unknown): number[] | null {
    let at = [...u];
    for (let i = 0; i < 12; i++) {
      const f = this.residuals(at);
      if (Math.max(...f.map(Math.abs)) < 1e-14) return at;
      const step = solveSquare([...this.jacobian(at), [...along]], [...f.map((x) => -x), 0]);
      if (!step) return null;
      at = plus(at, step, 1);
    }
    return Math.max(...this.residuals(at).map(Math.abs)) < 1e-12 ? at : null;
  }

  /** One step by the midpoint along the branch, `along` its tangent at u, corrected; null where it does not settle. */
  advance(u: Unknown, along: Unknown, length: number): number[] | null {
    const slope = this.tangent(plus(u, along, length / 2), along);
    return this.correct(plus(u, slope, length), slope);
  }

  axis(u: Unknown, design: Vector): Vector {
    return turn(u, design);
  }
}

function acrossOf(v: Vector): readonly [Vector, Vector] {
  const least = v.map(Math.abs).indexOf(Math.min(...v.map(Math.abs)));
  const a = times(v, [least === 0 ? 1 : 0, least === 1 ? 1 : 0, least === 2 ? 1 : 0]);
  const b = times(v, a);
  const unit = (w: Vector): Vector => {
    const n = Math.hypot(...w);
    return [w[0] / n, w[1] / n, w[2] / n];
  };
  return [unit(a), unit(b)];
}

/** Gaussian elimination with row exchange; null where singular. */
function solveSquare(a: readonly (readonly number[])[], b: readonly number[]): number[] | null {
  const n = b.length;
  const m = a.map((row, i) => [...row, b[i] as number]);
  for (let k = 0; k < n; k++) {
    let p = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(m[i]?.[k] as number) > Math.abs(m[p]?.[k] as number)) p = i;
    [m[k], m[p]] = [m[p] as number[], m[k] as number[]];
    const top = m[k] as number[];
    if (Math.abs(top[k] as number) < 1e-13) return null;
    for (let i = 0; i < n; i++) {
      if (i === k) continue;
      const row = m[i] as number[];
      const f = (row[k] as number) / (top[k] as number);
      for (let j = k; j <= n; j++) row[j] = (row[j] as number) - f * (top[j] as number);
    }
  }
  return m.map((row, i) => (row[n] as number) / (row[i] as number));
}

/** Unit vector that all rows vanish on: six rows, seven columns, complete pivoting. */
function nullVector(rows: readonly (readonly number[])[]): number[] {
  const m = rows.map((row) => [...row]);
  const columns = (m[0] as number[]).map((_, j) => j);
  for (let k = 0; k < m.length; k++) {
    let [pi, pj, best] = [k, k, -1];
    for (let i = k; i < m.length; i++)
      for (let j = k; j < columns.length; j++) {
        const v = Math.abs(m[i]?.[columns[j] as number] as number);
        if (v > best) [pi, pj, best] = [i, j, v];
      }
    [m[k], m[pi]] = [m[pi] as number[], m[k] as number[]];
    [columns[k], columns[pj]] = [columns[pj] as number, columns[k] as number];
    const top = m[k] as number[];
    for (let i = 0; i < m.length; i++) {
      if (i === k) continue;
      const row = m[i] as number[];
      const f = (row[columns[k] as number] as number) / (top[columns[k] as number] as number);
      for (let j = 0; j < row.length; j++) row[j] = (row[j] as number) - f * (top[j] as number);
    }
  }
  const free = columns[m.length] as number;
  const out = columns.map(() => 0);
  out[free] = 1;
  m.forEach((row, k) => {
    out[columns[k] as number] = -(row[free] as number) / (row[columns[k] as number] as number);
  });
  const length = Math.hypot(...out);
  return out.map((x) => x / length);
}

const HEIGHT = 2;

/** Where the corner stands at a rise of the wheel centre, or the rise at which its branch turns back before. */
export function followBranch(corner: CornerGeometry, design: Vector, travel: number): Reached | null {
  const branch = new Branch(corner);
  const target = corner.wheel.centre[2] + travel;
  const up = Math.sign(travel);
  let at: Unknown = branch.start;
  let along: Unknown = branch.tangent(at, [0, 0, up, 0, 0, 0, 0]);
  let length = STEP;
  for (let i = 0; i < 5000; i++) {
    const next = branch.advance(at, along, length);
    if (!next) {
      length /= 2;
      if (length < LEAST_STEP) return null;
      continue;
    }
    const ahead = branch.tangent(next, along);
    const passed = ((next[HEIGHT] as number) - target) * up >= 0;
    const turnsBack = (ahead[HEIGHT] as number) * up <= 0;
    if (!passed && !turnsBack) {
      at = next;
      along = ahead;
      continue;
    }
    if (length > LEAST_STEP) {
      length /= 2;
      continue;
    }
    if (passed) return settle(branch, at, design, target);
    return { foldAt: (at[HEIGHT] as number) - corner.wheel.centre[2] };
  }
  return null;
}

/** Newton on the joints and the height itself, from close by. */
function settle(branch: Branch, from: Unknown, design: Vector, target: number): Reached | null {
  let at = [...from];
  for (let i = 0; i < 8; i++) {
    const height = at.map((_, j) => (j === HEIGHT ? 1 : 0));
    const f = [...branch.residuals(at), (at[HEIGHT] as number) - target];
    const step = solveSquare(
      [...branch.jacobian(at), height],
      f.map((x) => -x),
    );
    if (!step) return null;
    at = plus(at, step, 1);
  }
  return { centre: [at[0] as number, at[1] as number, at[2] as number], axis: branch.axis(at, design) };
}
