import {
  add,
  cross,
  dot,
  factorise,
  makeFactorisation,
  norm,
  scale,
  solveFactorised,
  subtract,
  type Vector,
} from "#numeric";
import {
  type Anchor,
  type Direction,
  designDirection,
  designTriad,
  GROUND,
  type LineDirection,
  type Measure,
  pointsOfDirection,
} from "./mechanism.ts";
import type { Pose } from "./pose.ts";
import type { TravelSolver } from "./travel-solver.ts";
import type { Drive } from "./wheel.ts";
import { computeAttitude, computeAttitudeRates } from "./wheel-figures.ts";

/** What a figure is differentiated by: metres of travel, of rack, of one coordinate of one point, of one link's length. */
export type GradientBy =
  | { readonly kind: "travel" | "rack" }
  | { readonly kind: "coordinate"; readonly point: string; readonly axis: 0 | 1 | 2 }
  | { readonly kind: "length"; readonly link: string };

/** Exact first derivatives of the wheel's angles (rad/m) and places (m/m), everything else held. */
export interface WheelGradient {
  readonly by: GradientBy;
  readonly camber: number;
  readonly toe: number;
  readonly spin: number;
  readonly centre: Vector;
  readonly contact: Vector;
  /** Steps (v, w) of all bodies. */
  readonly steps: Float64Array;
}

/**
 * Derivatives of a solved pose by every input. At the pose every joint's error e(pose, p) is nought, so the bodies move by
 * -J^-1 de/dp, J the Jacobian the pose was solved with (implicit function theorem); de/dp is taken with the pose held.
 * A point's coordinates move the design too: e is the measure now less the measure at design. Null where J is singular.
 */
export function computeWheelGradients(
  solver: TravelSolver,
  pose: Pose,
  rack: number,
  drive: Drive,
): WheelGradient[] | null {
  const { mechanism, wheel } = solver.linkage;
  const n = solver.size;
  const f = makeFactorisation(n);
  f.lu.set(solver.jacobian(pose, rack));
  f.lu.set(solver.driveRow(pose, drive), n * (n - 1));
  if (!factorise(f)) return null;
  const attitude = computeAttitude(solver.linkage, pose);
  const gradient = (by: GradientBy, steps: Float64Array): WheelGradient => {
    solveFactorised(f, steps);
    const at = (i: number): number => steps[i] as number;
    const screw = { v: [at(0), at(1), at(2)] as Vector, w: [at(3), at(4), at(5)] as Vector };
    const rates = computeAttitudeRates(attitude, screw, wheel.loadedRadius);
    return {
      by,
      camber: rates.camber,
      toe: rates.toe,
      spin: rates.spin,
      centre: screw.v,
      contact: rates.contact,
      steps,
    };
  };
  const travel = new Float64Array(n);
  travel[n - 1] = 1;
  const errors = mechanism.constraints.map((m) => new ErrorOfMeasure(m, mechanism.points, solver, pose, rack));
  const out = [gradient({ kind: "travel" }, travel), gradient({ kind: "rack" }, solver.steerRates(pose, rack, null))];
  const holds = new Set(mechanism.constraints.flatMap((m) => pointsOf(m)));
  mechanism.points.forEach((_, point) => {
    if (!holds.has(point)) return;
    const parts = errors.map((e) => e.byPoint(point));
    for (const axis of [0, 1, 2] as const) {
      const right = new Float64Array(n);
      parts.forEach((part, i) => {
        right[i] = -(part[axis] as number);
      });
      out.push(gradient({ kind: "coordinate", point: mechanism.pointNames[point] as string, axis }, right));
    }
  });
  mechanism.constraints.forEach((m, i) => {
    if (m.kind !== "distance") return;
    const right = new Float64Array(n);
    right[i] = 1;
    out.push(gradient({ kind: "length", link: m.joint }, right));
  });
  return out;
}

/** Points that a measure depends on; ends of springs hold nothing and have no part in a pose. */
function pointsOf(m: Measure): number[] {
  return [m.a.point, m.b.point, ...(m.kind === "offset" ? pointsOfDirection(m.direction) : [])];
}

/** The error of one constraint at a held pose as a function of the design points: its derivatives by each of them. */
class ErrorOfMeasure {
  private readonly now: Vector;
  private readonly design: Vector;

  constructor(
    private readonly measure: Measure,
    private readonly points: readonly Vector[],
    private readonly solver: TravelSolver,
    private readonly pose: Pose,
    rack: number,
  ) {
    const { a, b } = measure;
    this.now = subtract(this.place(b, rack), this.place(a, rack));
    this.design = subtract(points[b.point] as Vector, points[a.point] as Vector);
  }

  /** Derivative by the three design coordinates of a point. */
  byPoint(point: number): Vector {
    const { measure: m } = this;
    const uses = m.a.point === point || m.b.point === point;
    const turns = m.kind === "offset" && pointsOfDirection(m.direction).length > 0;
    if (!uses && !turns) return [0, 0, 0];
    if (m.kind === "distance") {
      const now = scale(this.now, 1 / norm(this.now));
      const design = scale(this.design, 1 / norm(this.design));
      return this.byEnds(point, now, design);
    }
    const design = designTriad(m.direction, this.points)[m.which];
    const ends = this.byEnds(point, this.carried(m.carrier, design), design);
    // The carried direction itself may follow the point: e = d.(R^T (b - a) now - (b - a) at design), d at design.
    const across = subtract(this.carriedBack(m.carrier, this.now), this.design);
    const turned = turnOfDirection(m.direction, m.which, point, this.points);
    return turned ? add(ends, [dot(across, turned[0]), dot(across, turned[1]), dot(across, turned[2])]) : ends;
  }

  private byEnds(point: number, now: Vector, design: Vector): Vector {
    const { a, b } = this.measure;
    const end = (anchor: Anchor): Vector =>
      anchor.point === point ? subtract(this.carriedBack(anchor.body, now), design) : [0, 0, 0];
    return subtract(end(b), end(a));
  }

  private place(anchor: Anchor, rack: number): Vector {
    const p = this.points[anchor.point] as Vector;
    if (anchor.body === GROUND) return [p[0], p[1] + (anchor.onRack ? rack : 0), p[2]];
    const origin = this.solver.linkage.mechanism.origins[anchor.body] as Vector;
    const t = this.pose.t.subarray(3 * anchor.body);
    const moved = add(origin, [t[0] as number, t[1] as number, t[2] as number]);
    return add(moved, this.carried(anchor.body, subtract(p, origin)));
  }

  private carried(body: number, v: Vector): Vector {
    if (body === GROUND) return v;
    const r = this.pose.r.subarray(9 * body);
    const row = (i: number): number =>
      (r[3 * i] as number) * v[0] + (r[3 * i + 1] as number) * v[1] + (r[3 * i + 2] as number) * v[2];
    return [row(0), row(1), row(2)];
  }

  private carriedBack(body: number, v: Vector): Vector {
    if (body === GROUND) return v;
    const r = this.pose.r.subarray(9 * body);
    const column = (j: number): number =>
      (r[j] as number) * v[0] + (r[3 + j] as number) * v[1] + (r[6 + j] as number) * v[2];
    return [column(0), column(1), column(2)];
  }
}

/**
 * Derivatives by the three coordinates of a point of d, the unit vector number `which` of the triad of a direction through
 * two points (along u, first across f, second u x f); null where it does not follow the point.
 */
export function turnOfDirection(
  direction: Direction,
  which: 0 | 1 | 2,
  point: number,
  points: readonly Vector[],
): readonly [Vector, Vector, Vector] | null {
  const along = turnOfLine(direction.kind === "across" ? direction.along : direction, point, points);
  if (!along) return null;
  if (which === 2) return along;
  const u = designDirection(direction, points);
  const [first] = designTriad(direction, points);
  // First across is the unit vector of u x o with a fixed axis o, or of what a fixed direction has across u.
  const raw = (du: Vector): Vector => {
    if (direction.kind !== "across") {
      const other = axisAcross(u);
      return scale(cross(du, other), 1 / norm(cross(u, other)));
    }
    const { toward } = direction;
    const size = norm(subtract(toward, scale(u, dot(toward, u))));
    return scale(add(scale(u, dot(toward, du)), scale(du, dot(toward, u))), -1 / size);
  };
  const component = (du: Vector): Vector => {
    const change = raw(du);
    const df = subtract(change, scale(first, dot(first, change)));
    return which === 0 ? df : add(cross(du, first), cross(u, df));
  };
  return [component(along[0]), component(along[1]), component(along[2])];
}

/** Derivatives of a line's unit vector by the three coordinates of a point; null where it does not run through it. */
function turnOfLine(
  line: LineDirection,
  point: number,
  points: readonly Vector[],
): readonly [Vector, Vector, Vector] | null {
  if (line.kind === "given") return null;
  const sign = (line.to === point ? 1 : 0) - (line.from === point ? 1 : 0);
  if (sign === 0) return null;
  const length = norm(subtract(points[line.to] as Vector, points[line.from] as Vector));
  const u = designDirection(line, points);
  const by = (e: Vector): Vector => scale(subtract(e, scale(u, dot(u, e))), sign / length);
  return [by([1, 0, 0]), by([0, 1, 0]), by([0, 0, 1])];
}

/** The axis that `a` is least along, as perpendicularTo takes it. */
function axisAcross(a: Vector): Vector {
  const [x, y, z] = a.map(Math.abs) as [number, number, number];
  return x <= y && x <= z ? [1, 0, 0] : y <= z ? [0, 1, 0] : [0, 0, 1];
}
