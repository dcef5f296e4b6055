import {
  addJets,
  addVectors,
  atan2Jets,
  constantJet,
  constantVector,
  crossVectors,
  divideJets,
  dotVectors,
  type Jet,
  type JetVector,
  lengthOf,
  multiplyJets,
  parameterJet,
  scaleJet,
  sqrtJet,
  subtractJets,
  subtractVectors,
  type Vector,
} from "#numeric";
import type { CornerLinkage } from "./corner-linkage.ts";
import type { Pose } from "./pose.ts";
import { type Parameter, type PointCorrelations, UncertainNumbers } from "./uncertain-numbers.ts";

/** Standard deviations of a point along x, y and z, metres. */
export type PointDeviation = readonly [number, number, number];

/** Every coordinate of every point of a corner, then the rates named, each with its standard deviation. */
export function listParameters(
  linkage: CornerLinkage,
  deviations: readonly PointDeviation[],
  rates: readonly { readonly name: string; readonly sd: number }[] = [],
): readonly Parameter[] {
  return [
    ...linkage.mechanism.points.flatMap((_, point) =>
      ([0, 1, 2] as const).map(
        (axis): Parameter => ({ kind: "coordinate", point, axis, sd: deviations[point]?.[axis] ?? 0 }),
      ),
    ),
    ...rates.map(({ name, sd }): Parameter => ({ kind: "rate", name, sd })),
  ];
}

/** The corner's points as jets over some of its uncertain parameters: every derivative below is exact. */
export class JetCorner extends UncertainNumbers {
  readonly n: number;
  readonly points: readonly JetVector[];

  /** `steps` further parameters follow those listed: the moves of a pose, where a figure is to be derived by those too. */
  constructor(
    readonly linkage: CornerLinkage,
    parameters: readonly Parameter[],
    steps = 0,
    correlation: PointCorrelations = null,
  ) {
    super(parameters, linkage.mechanism.pointNames, correlation);
    this.n = parameters.length + steps;
    const slot = (point: number, axis: number): number =>
      parameters.findIndex((p) => p.kind === "coordinate" && p.point === point && p.axis === axis);
    this.points = linkage.mechanism.points.map((p, i) => [
      parameterJet(p[0], slot(i, 0), this.n),
      parameterJet(p[1], slot(i, 1), this.n),
      parameterJet(p[2], slot(i, 2), this.n),
    ]);
  }

  /** The factor (1) of a joint's rates, as a parameter where its deviation is known. */
  rateFactor(name: string): Jet {
    const index = this.parameters.findIndex((p) => p.kind === "rate" && p.name === name);
    return parameterJet(1, index, this.n);
  }

  constant(v: Vector): JetVector {
    return constantVector(v, this.n);
  }

  number(x: number): Jet {
    return constantJet(x, this.n);
  }

  /** Jet of the point with these design coordinates; a constant where it is not a point of the mechanism. */
  pointAt(p: Vector): JetVector {
    const i = this.linkage.mechanism.points.findIndex((q) => q[0] === p[0] && q[1] === p[1] && q[2] === p[2]);
    return i < 0 ? this.constant(p) : (this.points[i] as JetVector);
  }
}

/** A pose of the knuckle with its derivatives: a real pose, shifted and turned to first order by jets. */
export interface JetPose {
  readonly centre: JetVector;
  /** Rows of the rotation. */
  readonly rows: readonly [JetVector, JetVector, JetVector];
}

/** Jets of a pose that does not depend on the parameters, or, with `moves` (6 derivatives per parameter), one that does. */
export function makeJetPose(corner: JetCorner, pose: Pose, moves: readonly Float64Array[] | null): JetPose {
  const origin = corner.linkage.geometry.wheel.centre;
  const centre = [0, 1, 2].map((c) => corner.number((origin[c] as number) + (pose.t[c] as number))) as [Jet, Jet, Jet];
  const rows = [0, 1, 2].map((i) => [0, 1, 2].map((j) => corner.number(pose.r[3 * i + j] as number))) as unknown as [
    [Jet, Jet, Jet],
    [Jet, Jet, Jet],
    [Jet, Jet, Jet],
  ];
  moves?.forEach((move, k) => {
    for (let c = 0; c < 3; c++) (centre[c] as Jet)[k + 1] = move[c] as number;
    const [wx, wy, wz] = [move[3] as number, move[4] as number, move[5] as number];
    for (let j = 0; j < 3; j++) {
      const [a, b, d] = [pose.r[j] as number, pose.r[3 + j] as number, pose.r[6 + j] as number];
      (rows[0][j] as Jet)[k + 1] = wy * d - wz * b;
      (rows[1][j] as Jet)[k + 1] = wz * a - wx * d;
      (rows[2][j] as Jet)[k + 1] = wx * b - wy * a;
    }
  });
  return { centre, rows };
}

/** Rotation of a jet pose applied to a vector. */
export function turnVector(pose: JetPose, v: JetVector): JetVector {
  return [dotVectors(pose.rows[0], v), dotVectors(pose.rows[1], v), dotVectors(pose.rows[2], v)];
}

/** A design point of the knuckle: where it stands, and from the wheel centre. */
export function carryJet(corner: JetCorner, pose: JetPose, point: JetVector): { x: JetVector; r: JetVector } {
  const r = turnVector(pose, subtractVectors(point, corner.constant(corner.linkage.geometry.wheel.centre)));
  return { x: addVectors(pose.centre, r), r };
}

/** Unit vector of jets. */
export function unitJets(v: JetVector): JetVector {
  const l = lengthOf(v);
  return [divideJets(v[0], l), divideJets(v[1], l), divideJets(v[2], l)];
}

/** Two unit vectors across `along` (made with the axis it is least along) and itself. */
export function triadJets(corner: JetCorner, along: JetVector): readonly [JetVector, JetVector, JetVector] {
  const u = unitJets(along);
  const size = u.map((c) => Math.abs(c[0] as number));
  const [ax, ay, az] = [size[0] as number, size[1] as number, size[2] as number];
  const other: Vector = ax <= ay && ax <= az ? [1, 0, 0] : ay <= az ? [0, 1, 0] : [0, 0, 1];
  const first = unitJets(crossVectors(u, corner.constant(other)));
  return [first, crossVectors(u, first), u];
}

/** Velocity of the wheel as jets: v of the centre and rotation w. */
export interface JetScrew {
  readonly v: JetVector;
  readonly w: JetVector;
}

export interface JetAttitude {
  readonly camber: Jet;
  readonly toe: Jet;
  readonly contactY: Jet;
  readonly axis: JetVector;
}

/** Camber, toe and lateral place of the contact patch with their derivatives. */
export function jetAttitude(corner: JetCorner, pose: JetPose): JetAttitude {
  const n = turnVector(pose, corner.constant(corner.linkage.spinAxis));
  const h = sqrtJet(addJets(multiplyJets(n[0], n[0]), multiplyJets(n[1], n[1])));
  const radius = corner.linkage.geometry.wheel.loadedRadius;
  return {
    axis: n,
    camber: atan2Jets(scaleJet(n[2], -1), h),
    toe: atan2Jets(n[0], n[1]),
    contactY: addJets(pose.centre[1], scaleJet(divideJets(multiplyJets(n[2], n[1]), h), radius)),
  };
}

/** Rates of camber, toe and of the migrating contact patch (y and z) for a screw. */
export function jetAttitudeRates(
  corner: JetCorner,
  at: JetAttitude,
  screw: JetScrew,
): { camber: Jet; toe: Jet; contact: readonly [Jet, Jet] } {
  const n = at.axis;
  const dn = crossVectors(screw.w, n);
  const h2 = addJets(multiplyJets(n[0], n[0]), multiplyJets(n[1], n[1]));
  const h = sqrtJet(h2);
  const radius = corner.linkage.geometry.wheel.loadedRadius;
  const toe = divideJets(subtractJets(multiplyJets(dn[0], n[1]), multiplyJets(n[0], dn[1])), h2);
  const camber = divideJets(scaleJet(dn[2], -1), h);
  const first = divideJets(addJets(multiplyJets(dn[2], n[1]), multiplyJets(n[2], dn[1])), h);
  const second = divideJets(multiplyJets(multiplyJets(n[2], n[1]), multiplyJets(n[2], dn[2])), multiplyJets(h2, h));
  const dy = scaleJet(addJets(first, second), radius);
  const dz = scaleJet(divideJets(multiplyJets(n[2], dn[2]), h), radius);
  return { camber, toe, contact: [addJets(screw.v[1], dy), addJets(screw.v[2], dz)] };
}
