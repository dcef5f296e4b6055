import { add, rotate, subtract, type Vector } from "#numeric";
import type { CornerGeometry } from "./geometry.ts";
import type { Pose } from "./pose.ts";

/** What a term measures: the length of a link, the shift of a mount, the turn of a bush, or the length of the spring. */
export type TermKind = "link" | "mount" | "turn" | "spring";

/**
 * One elastic member as a scalar measure m of the pose with energy k/2 (m - free)^2 and force f = k (m - free)
 * (tension positive; of a turn the moment). `rate` Infinity is a rigid member: its force is an unknown of the balance.
 */
export interface ElasticTerm {
  readonly kind: TermKind;
  /** Link name, "strut_top", "trailing_arm" or "spring". */
  readonly name: string;
  readonly rate: number;
  /** Rate of the healthy member: free lengths belong to it. */
  readonly healthyRate: number;
  /** Takes part in carrying the wheel load at design. */
  readonly carriesPreload: boolean;
  /** Width of the dead band about the free length, metres; 0 without play. */
  readonly play: number;
  /** Value, gradient and change of the gradient at a pose and a rack position (metres), written into the buffer given. */
  readonly at: (pose: Pose, rack: number, into?: TermState) => TermState;
}

/** Value of a measure, its gradient by a step (v, w), and D: how the gradient itself changes with the step (6 x 6). */
export interface TermState {
  value: number;
  readonly row: Float64Array;
  readonly turning: Float64Array;
}

/** An empty buffer for the state of a term. */
export const makeTermState = (): TermState => ({
  value: 0,
  row: new Float64Array(6),
  turning: new Float64Array(36),
});

/** A measure of the place x of one knuckle point: value, gradient and second derivatives (row-major 3 by 3). */
export interface PointMeasure {
  readonly value: number;
  readonly gradient: Vector;
  readonly curvature: ArrayLike<number>;
}

/** Where the wheel centre stands. */
export const centreAt = ({ wheel }: CornerGeometry, pose: Pose): Vector => [
  wheel.centre[0] + (pose.t[0] as number),
  wheel.centre[1] + (pose.t[1] as number),
  wheel.centre[2] + (pose.t[2] as number),
];

/** A knuckle point from the wheel centre at a pose. */
export const armAt = ({ wheel }: CornerGeometry, pose: Pose, point: Vector): Vector =>
  rotate(pose.r, subtract(point, wheel.centre));

/** A measure of where one knuckle point stands. */
export function writePointTerm(
  geometry: CornerGeometry,
  point: Vector,
  pose: Pose,
  measure: (x: Vector) => PointMeasure,
  into: TermState,
): TermState {
  const r = armAt(geometry, pose, point);
  const m = measure(add(centreAt(geometry, pose), r));
  return writeMeasure(m.value, r, m.gradient, m.curvature, into);
}

/** The state of a measure with gradient g and second derivatives S by the place of the point at r from the wheel centre. */
export function writeMeasure(
  value: number,
  r: Vector,
  g: Vector,
  curvature: ArrayLike<number>,
  into: TermState,
): TermState {
  const s = (k: number): number => curvature[k] as number;
  return writeFlat(into, value, r[0], r[1], r[2], g[0], g[1], g[2], s(0), s(4), s(8), s(1), s(2), s(5));
}

const AXES: readonly Vector[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];
const NONE: Vector = [0, 0, 0];

/** Fills a 6 by 6 matrix with the changes of (force part, moment part) along each of the six unit steps. */
export function writeColumns(into: Float64Array, along: (v: Vector, w: Vector) => readonly [Vector, Vector]): void {
  for (let j = 0; j < 6; j++) {
    const axis = AXES[j % 3] as Vector;
    const [force, moment] = j < 3 ? along(axis, NONE) : along(NONE, axis);
    for (let i = 0; i < 3; i++) {
      into[6 * i + j] = force[i] as number;
      into[6 * (i + 3) + j] = moment[i] as number;
    }
  }
}

/** Distance of a knuckle point from a fixed one (y moved by `rack`): in plain numbers, as every link is one. */
export function writeDistanceTerm(
  geometry: CornerGeometry,
  point: Vector,
  fixed: Vector,
  rack: number,
  pose: Pose,
  into: TermState,
): TermState {
  const { centre } = geometry.wheel;
  const m = pose.r;
  const px = point[0] - centre[0];
  const py = point[1] - centre[1];
  const pz = point[2] - centre[2];
  const rx = (m[0] as number) * px + (m[1] as number) * py + (m[2] as number) * pz;
  const ry = (m[3] as number) * px + (m[4] as number) * py + (m[5] as number) * pz;
  const rz = (m[6] as number) * px + (m[7] as number) * py + (m[8] as number) * pz;
  const dx = centre[0] + (pose.t[0] as number) + rx - fixed[0];
  const dy = centre[1] + (pose.t[1] as number) + ry - (fixed[1] + rack);
  const dz = centre[2] + (pose.t[2] as number) + rz - fixed[2];
  const length = Math.sqrt(dx * dx + dy * dy + dz * dz);
  const one = 1 / length;
  const ux = dx * one;
  const uy = dy * one;
  const uz = dz * one;
  return writeFlat(
    into,
    length,
    rx,
    ry,
    rz,
    ux,
    uy,
    uz,
    (1 - ux * ux) * one,
    (1 - uy * uy) * one,
    (1 - uz * uz) * one,
    -ux * uy * one,
    -ux * uz * one,
    -uy * uz * one,
  );
}

/**
 * Row (g, r x g) of a measure of one point and its change with a step, written out as every link is one:
 * dg = S (v + w x r), d(r x g) = (w x r) x g + r x dg; with X the matrix of r x that is [S, -S X; X S, r g' - (r.g) - X S X].
 */
function writeFlat(
  into: TermState,
  value: number,
  rx: number,
  ry: number,
  rz: number,
  gx: number,
  gy: number,
  gz: number,
  sxx: number,
  syy: number,
  szz: number,
  sxy: number,
  sxz: number,
  syz: number,
): TermState {
  into.value = value;
  const { row, turning: t } = into;
  row[0] = gx;
  row[1] = gy;
  row[2] = gz;
  row[3] = ry * gz - rz * gy;
  row[4] = rz * gx - rx * gz;
  row[5] = rx * gy - ry * gx;
  t[0] = sxx;
  t[1] = sxy;
  t[2] = sxz;
  t[6] = sxy;
  t[7] = syy;
  t[8] = syz;
  t[12] = sxz;
  t[13] = syz;
  t[14] = szz;
  // -S X, row by row: minus (row of S) times X, which is (row of S) x r turned round.
  const a0 = sxz * ry - sxy * rz;
  const a1 = sxx * rz - sxz * rx;
  const a2 = sxy * rx - sxx * ry;
  const b0 = syz * ry - syy * rz;
  const b1 = sxy * rz - syz * rx;
  const b2 = syy * rx - sxy * ry;
  const c0 = szz * ry - syz * rz;
  const c1 = sxz * rz - szz * rx;
  const c2 = syz * rx - sxz * ry;
  t[3] = a0;
  t[4] = a1;
  t[5] = a2;
  t[9] = b0;
  t[10] = b1;
  t[11] = b2;
  t[15] = c0;
  t[16] = c1;
  t[17] = c2;
  // X S is its transpose.
  t[18] = a0;
  t[19] = b0;
  t[20] = c0;
  t[24] = a1;
  t[25] = b1;
  t[26] = c1;
  t[30] = a2;
  t[31] = b2;
  t[32] = c2;
  const ru = rx * gx + ry * gy + rz * gz;
  t[21] = ry * c0 - rz * b0 + rx * gx - ru;
  t[22] = ry * c1 - rz * b1 + rx * gy;
  t[23] = ry * c2 - rz * b2 + rx * gz;
  t[27] = rz * a0 - rx * c0 + ry * gx;
  t[28] = rz * a1 - rx * c1 + ry * gy - ru;
  t[29] = rz * a2 - rx * c2 + ry * gz;
  t[33] = rx * b0 - ry * a0 + rz * gx;
  t[34] = rx * b1 - ry * a1 + rz * gy;
  t[35] = rx * b2 - ry * a2 + rz * gz - ru;
  return into;
}
