import type { TermState } from "./elastic-term.ts";
import type { OwnDerivatives } from "./jet-term.ts";
import type { Pose } from "./pose.ts";

type Triple = readonly [number, number, number];

/**
 * Derivatives of (a factor times) the distance of a knuckle point from a body point, and of its row, by one coordinate of
 * either point: the end moves by dx (R e where the knuckle carries it), so the value changes by g.dx, the row (g, r x g) by
 * (S dx, dr x g + r x S dx). S stands in the first three columns of the state's change.
 */
export class DistanceDerivatives {
  constructor(
    private readonly centre: Triple,
    private readonly outer: Triple,
  ) {}

  /** By the three coordinates of the knuckle point, written from place `slot` on. */
  byOuter({ r }: Pose, state: TermState, into: OwnDerivatives, slot: number): void {
    for (let k = 0; k < 3; k++)
      this.write(state, into, slot + k, r, r[k] as number, r[3 + k] as number, r[6 + k] as number, true);
  }

  /** By the three coordinates of a body point, of which the distance's fixed end follows `share`. */
  byInner({ r }: Pose, state: TermState, into: OwnDerivatives, slot: number, share: number): void {
    for (let k = 0; k < 3; k++)
      this.write(state, into, slot + k, r, k === 0 ? -share : 0, k === 1 ? -share : 0, k === 2 ? -share : 0, false);
  }

  private write(
    { row, turning }: TermState,
    into: OwnDerivatives,
    slot: number,
    m: Float64Array,
    dx: number,
    dy: number,
    dz: number,
    carried: boolean,
  ): void {
    const [gx, gy, gz] = [row[0] as number, row[1] as number, row[2] as number];
    const hx = (turning[0] as number) * dx + (turning[1] as number) * dy + (turning[2] as number) * dz;
    const hy = (turning[6] as number) * dx + (turning[7] as number) * dy + (turning[8] as number) * dz;
    const hz = (turning[12] as number) * dx + (turning[13] as number) * dy + (turning[14] as number) * dz;
    const px = this.outer[0] - this.centre[0];
    const py = this.outer[1] - this.centre[1];
    const pz = this.outer[2] - this.centre[2];
    const rx = (m[0] as number) * px + (m[1] as number) * py + (m[2] as number) * pz;
    const ry = (m[3] as number) * px + (m[4] as number) * py + (m[5] as number) * pz;
    const rz = (m[6] as number) * px + (m[7] as number) * py + (m[8] as number) * pz;
    const arm = carried ? 1 : 0;
    into.value[slot] = gx * dx + gy * dy + gz * dz;
    const o = 6 * slot;
    into.row[o] = hx;
    into.row[o + 1] = hy;
    into.row[o + 2] = hz;
    into.row[o + 3] = ry * hz - rz * hy + arm * (dy * gz - dz * gy);
    into.row[o + 4] = rz * hx - rx * hz + arm * (dz * gx - dx * gz);
    into.row[o + 5] = rx * hy - ry * hx + arm * (dx * gy - dy * gx);
  }
}
