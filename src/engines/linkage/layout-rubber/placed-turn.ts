import { add, cross, dot, norm, scale, subtract, type Vector } from "#numeric";
import { designTriad, type Mechanism } from "../mechanism.ts";
import { type Pose, rotationVector } from "../pose.ts";
import { angleOverSine, rotationVectorFactor } from "../turn-factors.ts";
import { carriedBy, PlacedOnBodies } from "./placed-on-bodies.ts";
import {
  addMoment,
  addWrench,
  type CarriedDirection,
  type Disturbance,
  type MeasureChange,
  type PlacedEnd,
} from "./posed-bodies.ts";
import { type About, designLineOf, type TurnMeasure } from "./turn-measure.ts";

type Swing = Extract<TurnMeasure, { kind: "swing" }>;
type Twist = Extract<TurnMeasure, { kind: "twist" }>;

/**
 * Part about q of the shortest turn of a line from u0 to u, q and u0 as one body carries them now: f(u0.u) (q x u0).u with f the
 * angle over its sine. Turned together all three change nothing, so the carrier feels minus the moment u x g of the line, g the
 * gradient by u.
 */
export class PlacedSwing extends PlacedOnBodies<Swing> {
  readonly value: number;
  readonly row: Float64Array;
  private readonly q: CarriedDirection;
  private readonly u0: CarriedDirection;
  private readonly u: Vector;
  /** The ends of a line between anchors with its length, or the line a body carries. */
  private readonly ends: { readonly a: PlacedEnd; readonly b: PlacedEnd; readonly length: number } | null;
  private readonly carriedLine: CarriedDirection | null;
  private readonly p: Vector;
  private readonly pu: number;
  private readonly f: readonly [value: number, first: number, second: number, third: number];
  private readonly g: Vector;
  /** Of a line between anchors: the gradient by its second end. */
  private readonly force: Vector;

  constructor(mechanism: Mechanism, measure: Swing, pose: Pose, rack: number) {
    super(mechanism, measure, pose, rack);
    const { bodies } = this;
    const { line, carrier } = measure;
    const design: About = { direction: designLineOf(measure), which: 2 };
    this.q = carriedBy(bodies, carrier, measure.about);
    this.u0 = carriedBy(bodies, carrier, design);
    if ("on" in line) {
      this.ends = null;
      this.carriedLine = carriedBy(bodies, line.on, design);
      this.u = this.carriedLine.now;
    } else {
      const [a, b] = [bodies.place(line.a), bodies.place(line.b)];
      const d = subtract(b.x, a.x);
      const length = norm(d);
      this.ends = { a, b, length };
      this.carriedLine = null;
      this.u = scale(d, 1 / length);
    }
    this.p = cross(this.q.now, this.u0.now);
    this.pu = dot(this.p, this.u);
    this.f = angleOverSine(dot(this.u0.now, this.u));
    const [f, f1] = this.f;
    this.value = f * this.pu;
    this.g = add(scale(this.u0.now, f1 * this.pu), scale(this.p, f));
    this.force = this.ends
      ? scale(subtract(this.g, scale(this.u, dot(this.u, this.g))), 1 / this.ends.length)
      : [0, 0, 0];
    this.row = bodies.newRow();
    addMoment(this.row, carrier, cross(this.g, this.u));
    if (this.carriedLine) addMoment(this.row, this.carriedLine.body, cross(this.u, this.g));
    if (this.ends) {
      const { a, b } = this.ends;
      addWrench(this.row, b.anchor.body, this.force, cross(b.r, this.force));
      addWrench(this.row, a.anchor.body, scale(this.force, -1), cross(this.force, a.r));
    }
  }

  protected change(by: Disturbance): MeasureChange {
    const { u, g, p, pu, ends } = this;
    const u0 = this.u0.now;
    const [f, f1, f2] = this.f;
    const dq = by.carried(this.q);
    const du0 = by.carried(this.u0);
    const a = ends && by.end(ends.a);
    const b = ends && by.end(ends.b);
    const dx: Vector = a && b ? subtract(b.x, a.x) : [0, 0, 0];
    const stretch = dot(u, dx);
    const du = this.carriedLine
      ? by.carried(this.carriedLine)
      : scale(subtract(dx, scale(u, stretch)), 1 / (ends?.length ?? 1));
    const dp = add(cross(dq, u0), cross(this.q.now, du0));
    const dc = dot(du0, u) + dot(u0, du);
    const dpu = dot(dp, u) + dot(p, du);
    const dg = add(add(scale(u0, f2 * dc * pu + f1 * dpu), scale(du0, f1 * pu)), add(scale(p, f1 * dc), scale(dp, f)));
    const row = this.bodies.newRow();
    addMoment(row, this.measure.carrier, add(cross(dg, u), cross(g, du)));
    if (this.carriedLine) addMoment(row, this.carriedLine.body, add(cross(du, g), cross(u, dg)));
    if (ends && a && b) {
      const across = subtract(subtract(dg, scale(du, dot(u, g))), scale(u, dot(du, g) + dot(u, dg)));
      const dForce = scale(subtract(across, scale(this.force, stretch)), 1 / ends.length);
      const moment = (end: PlacedEnd, dr: Vector): Vector => add(cross(dr, this.force), cross(end.r, dForce));
      addWrench(row, ends.b.anchor.body, dForce, moment(ends.b, b.r));
      addWrench(row, ends.a.anchor.body, scale(dForce, -1), scale(moment(ends.a, a.r), -1));
    }
    return { value: f1 * dc * pu + f * dpu, row };
  }
}

/**
 * Part about q of the rotation vector o of one body as another sees it. A step w between them, as that other sees it, changes o
 * by J w = w - o x w/2 + k o x (o x w), so the row is J'q, turned into the car.
 */
export class PlacedTwist extends PlacedOnBodies<Twist> {
  readonly value: number;
  readonly row: Float64Array;
  private readonly q: Vector;
  private readonly o: Vector;
  private readonly k: readonly [value: number, first: number, second: number, third: number];
  /** J'q as the first body sees it, and turned into the car. */
  private readonly own: Vector;
  private readonly g: Vector;

  constructor(mechanism: Mechanism, measure: Twist, pose: Pose, rack: number) {
    super(mechanism, measure, pose, rack);
    const { bodies } = this;
    const [first, second] = measure.between;
    const [a, b] = [bodies.turnOf(first), bodies.turnOf(second)];
    const seen = Array.from({ length: 9 }, (_, i) => {
      const [row, column] = [Math.floor(i / 3), i % 3];
      return [0, 1, 2].reduce((sum, c) => sum + (a[3 * c + row] as number) * (b[3 * c + column] as number), 0);
    });
    this.q = designTriad(measure.about.direction, mechanism.points)[measure.about.which];
    this.o = rotationVector(seen);
    this.k = rotationVectorFactor(dot(this.o, this.o));
    this.value = dot(this.q, this.o);
    this.own = this.transposed(this.q);
    this.g = bodies.carry(first, this.own);
    this.row = bodies.newRow();
    addMoment(this.row, second, this.g);
    addMoment(this.row, first, scale(this.g, -1));
  }

  /** J' of a direction. */
  private transposed(q: Vector): Vector {
    const { o } = this;
    return add(add(q, scale(cross(o, q), 0.5)), scale(cross(o, cross(o, q)), this.k[0]));
  }

  protected change(by: Disturbance): MeasureChange {
    const { q, o, bodies, g } = this;
    const [first, second] = this.measure.between;
    const { direction, which } = this.measure.about;
    const [k, k1] = this.k;
    const twice = (a: Vector, b: Vector, c: Vector): Vector => cross(a, cross(b, c));
    const step = bodies.carryBack(first, subtract(by.turn(second), by.turn(first)));
    const d = add(subtract(step, scale(cross(o, step), 0.5)), scale(twice(o, o, step), k));
    const dq = by.design(direction, which);
    const bent = add(
      add(scale(cross(d, q), 0.5), scale(twice(o, o, q), 2 * k1 * dot(o, d))),
      scale(add(twice(d, o, q), twice(o, d, q)), k),
    );
    const dg = add(cross(by.turn(first), g), bodies.carry(first, add(bent, this.transposed(dq))));
    const row = bodies.newRow();
    addMoment(row, second, dg);
    addMoment(row, first, scale(dg, -1));
    return { value: dot(dq, o) + dot(this.own, step), row };
  }
}
