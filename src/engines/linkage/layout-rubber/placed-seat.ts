import { add, cross, dot, scale, subtract, type Vector } from "#numeric";
import type { Mechanism } from "../mechanism.ts";
import type { Pose } from "../pose.ts";
import { carriedBy, PlacedOnBodies } from "./placed-on-bodies.ts";
import {
  addMoment,
  addWrench,
  type CarriedDirection,
  type Disturbance,
  type MeasureChange,
  type PlacedEnd,
} from "./posed-bodies.ts";
import type { SeatedOffset } from "./turn-measure.ts";

/**
 * Offset m = E.(x_b - x_a) of a point from a line across a direction e that the point's body carries, tilted the shortest way
 * from the line a at design, as that body carries it, to the line a' now: E = e - beta s with s = a + a', k = 1 + a.a',
 * beta = (a'.e)/k. Turned together all change nothing, so the point's body feels E x d less what the line's body feels.
 */
export class PlacedSeat extends PlacedOnBodies<SeatedOffset> {
  readonly value: number;
  readonly row: Float64Array;
  private readonly a: PlacedEnd;
  private readonly b: PlacedEnd;
  private readonly d: Vector;
  private readonly before: CarriedDirection;
  private readonly now: CarriedDirection;
  private readonly e: CarriedDirection;
  private readonly k: number;
  private readonly beta: number;
  private readonly s: Vector;
  private readonly tilted: Vector;
  /** e less what of the line at design is in it, and the line now across that. */
  private readonly h: Vector;
  private readonly nh: Vector;

  constructor(mechanism: Mechanism, measure: SeatedOffset, pose: Pose, rack: number) {
    super(mechanism, measure, pose, rack);
    const { bodies } = this;
    const { a, b, line, toward } = measure;
    this.a = bodies.place(a);
    this.b = bodies.place(b);
    this.d = subtract(this.b.x, this.a.x);
    this.before = carriedBy(bodies, b.body, { direction: line, which: 2 });
    this.now = carriedBy(bodies, a.body, { direction: line, which: 2 });
    this.e = carriedBy(bodies, b.body, toward);
    const [was, is, e] = [this.before.now, this.now.now, this.e.now];
    this.k = 1 + dot(was, is);
    this.beta = dot(is, e) / this.k;
    this.s = add(was, is);
    this.tilted = subtract(e, scale(this.s, this.beta));
    this.h = subtract(e, scale(was, this.beta));
    this.nh = cross(is, this.h);
    this.value = dot(this.tilted, this.d);
    this.row = bodies.newRow();
    addWrench(this.row, b.body, this.tilted, cross(this.b.r, this.tilted));
    addWrench(this.row, a.body, scale(this.tilted, -1), cross(this.tilted, this.a.r));
    const turn = this.turnOfLine();
    addMoment(this.row, a.body, turn);
    addMoment(this.row, b.body, subtract(cross(this.tilted, this.d), turn));
  }

  /** Moment on the body with the line from how E follows the line. */
  private turnOfLine(): Vector {
    const { nh, s, d, k, beta } = this;
    return subtract(scale(nh, -dot(s, d) / k), scale(cross(this.now.now, d), beta));
  }

  protected change({ end, carried }: Disturbance): MeasureChange {
    const { d, k, beta, s, tilted, h, nh, measure } = this;
    const [was, is, e] = [this.before.now, this.now.now, this.e.now];
    const [a, b] = [end(this.a), end(this.b)];
    const [dWas, dIs, de] = [carried(this.before), carried(this.now), carried(this.e)];
    const dd = subtract(b.x, a.x);
    const dk = dot(dWas, is) + dot(was, dIs);
    const dBeta = (dot(dIs, e) + dot(is, de) - beta * dk) / k;
    const ds = add(dWas, dIs);
    const dTilted = subtract(de, add(scale(s, dBeta), scale(ds, beta)));
    const dh = subtract(de, add(scale(was, dBeta), scale(dWas, beta)));
    const dNh = add(cross(dIs, h), cross(is, dh));
    const sd = dot(s, d);
    const dSdOverK = (dot(ds, d) + dot(s, dd) - (sd * dk) / k) / k;
    const dTurn = subtract(
      scale(add(scale(dNh, sd / k), scale(nh, dSdOverK)), -1),
      add(scale(cross(is, d), dBeta), scale(add(cross(dIs, d), cross(is, dd)), beta)),
    );
    const row = this.bodies.newRow();
    const moment = (placed: PlacedEnd, dr: Vector): Vector => add(cross(dr, tilted), cross(placed.r, dTilted));
    addWrench(row, measure.b.body, dTilted, moment(this.b, b.r));
    addWrench(row, measure.a.body, scale(dTilted, -1), scale(moment(this.a, a.r), -1));
    addMoment(row, measure.a.body, dTurn);
    addMoment(row, measure.b.body, subtract(add(cross(dTilted, d), cross(tilted, dd)), dTurn));
    return { value: dot(dTilted, d) + dot(tilted, dd), row };
  }
}
