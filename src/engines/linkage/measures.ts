import { designTriad, GROUND, type Measure, type Mechanism } from "./mechanism.ts";
import type { Pose } from "./pose.ts";

/**
 * Values and gradients of measures at a pose, without allocation.
 *
 *   point of body k:  x = O_k + t_k + R_k (P - O_k),  r = x - (O_k + t_k);  step (v, w):  dx = v + w x r
 *   distance:         m = |x_b - x_a|, u = (x_b - x_a)/m;  dm = u.(dx_b - dx_a)
 *   offset:           m = E.(x_b - x_a), E = R_c e;        dm = E.(dx_b - dx_a) + w_c.(E x (x_b - x_a))
 *
 * A gradient row has 6 entries per body: the derivative by v, then by w. What the measures are is kept in flat arrays:
 * this is the innermost loop of everything.
 */
export class MeasureEvaluator {
  readonly columns: number;
  private readonly count: number;
  private readonly isOffset: Uint8Array;
  /** Bodies of both ends and of the carrier, two ends and one carrier each. */
  private readonly bodies: Int32Array;
  /** Both ends: from the body's origin where a body carries it, else its place in the vehicle. */
  private readonly ends: Float64Array;
  /** Origin of the body of both ends; nought for the ground. */
  private readonly origins: Float64Array;
  /** 1 where an end moves with the rack. */
  private readonly onRack: Float64Array;
  /** Direction of an offset at design. */
  private readonly directions: Float64Array;
  /** Where the two ends stand, and from the origins of their bodies. */
  private readonly placed = new Float64Array(12);

  constructor(mechanism: Mechanism, measures: readonly Measure[]) {
    const n = measures.length;
    this.count = n;
    this.columns = 6 * mechanism.origins.length;
    this.isOffset = new Uint8Array(n);
    this.bodies = new Int32Array(3 * n);
    this.ends = new Float64Array(6 * n);
    this.origins = new Float64Array(6 * n);
    this.onRack = new Float64Array(2 * n);
    this.directions = new Float64Array(3 * n);
    measures.forEach((m, i) => {
      [m.a, m.b].forEach((anchor, end) => {
        const point = mechanism.points[anchor.point] as readonly [number, number, number];
        const origin = mechanism.origins[anchor.body];
        for (let c = 0; c < 3; c++) {
          this.ends[6 * i + 3 * end + c] = (point[c] as number) - (origin?.[c] ?? 0);
          this.origins[6 * i + 3 * end + c] = origin?.[c] ?? 0;
        }
        this.bodies[3 * i + end] = anchor.body;
        this.onRack[2 * i + end] = anchor.onRack ? 1 : 0;
      });
      if (m.kind !== "offset") return;
      this.isOffset[i] = 1;
      this.bodies[3 * i + 2] = m.carrier;
      this.directions.set(designTriad(m.direction, mechanism.points)[m.which], 3 * i);
    });
  }

  /** Writes all values into `values` and all gradient rows into `rows` (row-major), for the given rack position. */
  evaluate(pose: Pose, rack: number, values: Float64Array, rows: Float64Array): void {
    const { columns, count, placed } = this;
    for (let i = 0; i < count; i++) {
      const o = i * columns;
      for (let j = o; j < o + columns; j++) rows[j] = 0;
      this.place(i, 0, pose, rack);
      this.place(i, 1, pose, rack);
      const dx = (placed[6] as number) - (placed[0] as number);
      const dy = (placed[7] as number) - (placed[1] as number);
      const dz = (placed[8] as number) - (placed[2] as number);
      if (this.isOffset[i] === 1) {
        values[i] = this.addOffset(i, pose, rows, dx, dy, dz);
        continue;
      }
      const length = Math.sqrt(dx * dx + dy * dy + dz * dz);
      const ux = dx / length;
      const uy = dy / length;
      const uz = dz / length;
      values[i] = length;
      this.addEnd(i, 1, rows, ux, uy, uz);
      this.addEnd(i, 0, rows, -ux, -uy, -uz);
    }
  }

  /** Derivative of every measure by the rack position at a pose. */
  rackRates(pose: Pose, rack: number, out: Float64Array): void {
    const { placed } = this;
    for (let i = 0; i < this.count; i++) {
      const moved = (this.onRack[2 * i + 1] as number) - (this.onRack[2 * i] as number);
      out[i] = 0;
      if (this.isOffset[i] === 1 || moved === 0) continue;
      this.place(i, 0, pose, rack);
      this.place(i, 1, pose, rack);
      const dx = (placed[6] as number) - (placed[0] as number);
      const dy = (placed[7] as number) - (placed[1] as number);
      const dz = (placed[8] as number) - (placed[2] as number);
      out[i] = (moved * dy) / Math.sqrt(dx * dx + dy * dy + dz * dz);
    }
  }

  private addOffset(i: number, pose: Pose, rows: Float64Array, dx: number, dy: number, dz: number): number {
    const e0 = this.directions[3 * i] as number;
    const e1 = this.directions[3 * i + 1] as number;
    const e2 = this.directions[3 * i + 2] as number;
    const carrier = this.bodies[3 * i + 2] as number;
    let ex = e0;
    let ey = e1;
    let ez = e2;
    if (carrier !== GROUND) {
      const q = 9 * carrier;
      const { r } = pose;
      ex = (r[q] as number) * e0 + (r[q + 1] as number) * e1 + (r[q + 2] as number) * e2;
      ey = (r[q + 3] as number) * e0 + (r[q + 4] as number) * e1 + (r[q + 5] as number) * e2;
      ez = (r[q + 6] as number) * e0 + (r[q + 7] as number) * e1 + (r[q + 8] as number) * e2;
      const w = i * this.columns + 6 * carrier + 3;
      rows[w] = (rows[w] as number) + ey * dz - ez * dy;
      rows[w + 1] = (rows[w + 1] as number) + ez * dx - ex * dz;
      rows[w + 2] = (rows[w + 2] as number) + ex * dy - ey * dx;
    }
    this.addEnd(i, 1, rows, ex, ey, ez);
    this.addEnd(i, 0, rows, -ex, -ey, -ez);
    return ex * dx + ey * dy + ez * dz;
  }

  /** Places one end of a measure: 3 numbers where it stands, and 3 from its body's origin. */
  private place(i: number, end: 0 | 1, pose: Pose, rack: number): void {
    const { ends, placed } = this;
    const p = 6 * i + 3 * end;
    const o = 6 * end;
    const body = this.bodies[3 * i + end] as number;
    const a = ends[p] as number;
    const b = ends[p + 1] as number;
    const c = ends[p + 2] as number;
    if (body === GROUND) {
      placed[o] = a;
      placed[o + 1] = b + (this.onRack[2 * i + end] as number) * rack;
      placed[o + 2] = c;
      return;
    }
    const { origins } = this;
    const { t, r } = pose;
    const k = 3 * body;
    const q = 9 * body;
    const rx = (r[q] as number) * a + (r[q + 1] as number) * b + (r[q + 2] as number) * c;
    const ry = (r[q + 3] as number) * a + (r[q + 4] as number) * b + (r[q + 5] as number) * c;
    const rz = (r[q + 6] as number) * a + (r[q + 7] as number) * b + (r[q + 8] as number) * c;
    placed[o] = (origins[p] as number) + (t[k] as number) + rx;
    placed[o + 1] = (origins[p + 1] as number) + (t[k + 1] as number) + ry;
    placed[o + 2] = (origins[p + 2] as number) + (t[k + 2] as number) + rz;
    placed[o + 3] = rx;
    placed[o + 4] = ry;
    placed[o + 5] = rz;
  }

  /** Adds the gradient of g.dx for a placed end (nothing for the ground): g by v, r x g by w. */
  private addEnd(i: number, end: 0 | 1, rows: Float64Array, gx: number, gy: number, gz: number): void {
    const body = this.bodies[3 * i + end] as number;
    if (body === GROUND) return;
    const { placed } = this;
    const j = i * this.columns + 6 * body;
    const rx = placed[6 * end + 3] as number;
    const ry = placed[6 * end + 4] as number;
    const rz = placed[6 * end + 5] as number;
    rows[j] = (rows[j] as number) + gx;
    rows[j + 1] = (rows[j + 1] as number) + gy;
    rows[j + 2] = (rows[j + 2] as number) + gz;
    rows[j + 3] = (rows[j + 3] as number) + ry * gz - rz * gy;
    rows[j + 4] = (rows[j + 4] as number) + rz * gx - rx * gz;
    rows[j + 5] = (rows[j + 5] as number) + rx * gy - ry * gx;
  }
}
