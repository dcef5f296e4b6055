import { type Anchor, designTriad, GROUND, type Measure, type Mechanism } from "./mechanism.ts";
import type { Pose } from "./pose.ts";

/**
 * Values and gradients of measures at a pose, without allocation.
 *
 *   point of body k:  x = O_k + t_k + R_k (P - O_k),  r = x - (O_k + t_k);  step (v, w):  dx = v + w x r
 *   distance:         m = |x_b - x_a|, u = (x_b - x_a)/m;  dm = u.(dx_b - dx_a)
 *   offset:           m = E.(x_b - x_a), E = R_c e;        dm = E.(dx_b - dx_a) + w_c.(E x (x_b - x_a))
 *
 * A gradient row has 6 entries per body: the derivative by v, then by w.
 */
export class MeasureEvaluator {
  readonly columns: number;
  private readonly xa = new Float64Array(6);
  private readonly xb = new Float64Array(6);
  private readonly triads: readonly (readonly [number, number, number] | null)[];

  constructor(
    private readonly mechanism: Mechanism,
    private readonly measures: readonly Measure[],
  ) {
    this.columns = 6 * mechanism.origins.length;
    this.triads = measures.map((m) =>
      m.kind === "offset" ? designTriad(m.direction, mechanism.points)[m.which] : null,
    );
  }

  /** Writes all values into `values` and all gradient rows into `rows` (row-major), for the given rack position. */
  evaluate(pose: Pose, rack: number, values: Float64Array, rows: Float64Array): void {
    for (let i = 0; i < this.measures.length; i++) {
      rows.fill(0, i * this.columns, (i + 1) * this.columns);
      values[i] = this.evaluateOne(i, pose, rack, rows);
    }
  }

  /** Derivative of every measure by the rack position, at the pose `evaluate` was last called with. */
  rackRates(pose: Pose, rack: number, out: Float64Array): void {
    for (let i = 0; i < this.measures.length; i++) {
      const m = this.measures[i] as Measure;
      out[i] = 0;
      if (m.kind !== "distance" || (!m.a.onRack && !m.b.onRack)) continue;
      this.place(m.a, pose, rack, this.xa);
      this.place(m.b, pose, rack, this.xb);
      const u = this.unitDifference();
      out[i] = (m.b.onRack ? u[1] : 0) - (m.a.onRack ? u[1] : 0);
    }
  }

  private evaluateOne(i: number, pose: Pose, rack: number, rows: Float64Array): number {
    const m = this.measures[i] as Measure;
    const o = i * this.columns;
    this.place(m.a, pose, rack, this.xa);
    this.place(m.b, pose, rack, this.xb);
    if (m.kind === "distance") {
      const [ux, uy, uz, length] = this.unitDifference();
      addPointGradient(rows, o, m.b.body, this.xb, ux, uy, uz);
      addPointGradient(rows, o, m.a.body, this.xa, -ux, -uy, -uz);
      return length;
    }
    const e = this.triads[i] as readonly [number, number, number];
    let ex = e[0];
    let ey = e[1];
    let ez = e[2];
    const dx = (this.xb[0] as number) - (this.xa[0] as number);
    const dy = (this.xb[1] as number) - (this.xa[1] as number);
    const dz = (this.xb[2] as number) - (this.xa[2] as number);
    if (m.carrier !== GROUND) {
      const q = 9 * m.carrier;
      const r = pose.r;
      ex = (r[q] as number) * e[0] + (r[q + 1] as number) * e[1] + (r[q + 2] as number) * e[2];
      ey = (r[q + 3] as number) * e[0] + (r[q + 4] as number) * e[1] + (r[q + 5] as number) * e[2];
      ez = (r[q + 6] as number) * e[0] + (r[q + 7] as number) * e[1] + (r[q + 8] as number) * e[2];
      const w = o + 6 * m.carrier + 3;
      rows[w] = (rows[w] as number) + ey * dz - ez * dy;
      rows[w + 1] = (rows[w + 1] as number) + ez * dx - ex * dz;
      rows[w + 2] = (rows[w + 2] as number) + ex * dy - ey * dx;
    }
    addPointGradient(rows, o, m.b.body, this.xb, ex, ey, ez);
    addPointGradient(rows, o, m.a.body, this.xa, -ex, -ey, -ez);
    return ex * dx + ey * dy + ez * dz;
  }

  private readonly u: [number, number, number, number] = [0, 0, 0, 0];

  private unitDifference(): readonly [number, number, number, number] {
    const dx = (this.xb[0] as number) - (this.xa[0] as number);
    const dy = (this.xb[1] as number) - (this.xa[1] as number);
    const dz = (this.xb[2] as number) - (this.xa[2] as number);
    const length = Math.sqrt(dx * dx + dy * dy + dz * dz);
    const u = this.u;
    u[0] = dx / length;
    u[1] = dy / length;
    u[2] = dz / length;
    u[3] = length;
    return u;
  }

  private place(anchor: Anchor, pose: Pose, rack: number, out: Float64Array): void {
    const p = this.mechanism.points[anchor.point] as readonly [number, number, number];
    if (anchor.body === GROUND) {
      out[0] = p[0];
      out[1] = p[1] + (anchor.onRack ? rack : 0);
      out[2] = p[2];
      return;
    }
    const origin = this.mechanism.origins[anchor.body] as readonly [number, number, number];
    const { t, r } = pose;
    const k = 3 * anchor.body;
    const q = 9 * anchor.body;
    const a = p[0] - origin[0];
    const b = p[1] - origin[1];
    const c = p[2] - origin[2];
    const rx = (r[q] as number) * a + (r[q + 1] as number) * b + (r[q + 2] as number) * c;
    const ry = (r[q + 3] as number) * a + (r[q + 4] as number) * b + (r[q + 5] as number) * c;
    const rz = (r[q + 6] as number) * a + (r[q + 7] as number) * b + (r[q + 8] as number) * c;
    out[0] = origin[0] + (t[k] as number) + rx;
    out[1] = origin[1] + (t[k + 1] as number) + ry;
    out[2] = origin[2] + (t[k + 2] as number) + rz;
    out[3] = rx;
    out[4] = ry;
    out[5] = rz;
  }
}

/** Adds the gradient of g.dx for a point of a body (nothing for the ground): g by v, r x g by w. */
function addPointGradient(
  rows: Float64Array,
  o: number,
  body: number,
  x: Float64Array,
  gx: number,
  gy: number,
  gz: number,
): void {
  if (body === GROUND) return;
  const i = o + 6 * body;
  const rx = x[3] as number;
  const ry = x[4] as number;
  const rz = x[5] as number;
  rows[i] = (rows[i] as number) + gx;
  rows[i + 1] = (rows[i + 1] as number) + gy;
  rows[i + 2] = (rows[i + 2] as number) + gz;
  rows[i + 3] = (rows[i + 3] as number) + ry * gz - rz * gy;
  rows[i + 4] = (rows[i + 4] as number) + rz * gx - rx * gz;
  rows[i + 5] = (rows[i + 5] as number) + rx * gy - ry * gx;
}
