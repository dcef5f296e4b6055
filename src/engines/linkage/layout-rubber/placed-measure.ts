import { add, cross, dot, norm, scale, subtract, type Vector } from "#numeric";
import { designTriad, type Measure, type Mechanism, pointsOfDirection } from "../mechanism.ts";
import type { Pose } from "../pose.ts";
import {
  addMoment,
  addWrench,
  type CarriedDirection,
  type Disturbance,
  type MeasureChange,
  type PlacedEnd,
  PosedBodies,
} from "./posed-bodies.ts";

/** One scalar measure between bodies at a pose: value, gradient by the steps (v, w) of all bodies, exact changes of both. */
export interface Placed {
  readonly value: number;
  readonly row: Float64Array;
  /** Whether the measure changes with the steps of a body at all. */
  readonly touches: (body: number) => boolean;
  /** Change with part `column` of the steps of all bodies: three shifts, then three turns a body. */
  readonly changeByStep: (column: number) => MeasureChange;
  /** Change with a coordinate of a design point, all bodies held; null where the measure does not depend on it. */
  readonly changeByPoint: (point: number, axis: 0 | 1 | 2) => MeasureChange | null;
}

/** The design points a length or an offset depends on. */
export const pointsOfMeasure = (m: Measure): readonly number[] => [
  m.a.point,
  m.b.point,
  ...(m.kind === "offset" ? pointsOfDirection(m.direction) : []),
];

/**
 * A length or an offset between any two bodies at a pose. With E the line's direction (of a distance) or the carried direction
 * (of an offset) and d = x_b - x_a, the row is (E, r_b x E) on b, minus (E, r_a x E) on a, and E x d on the turn of an
 * offset's carrier.
 */
export class PlacedMeasure implements Placed {
  readonly value: number;
  readonly row: Float64Array;
  /** The way its second end moves to make it grow; unit vector. */
  get along(): Vector {
    return this.e;
  }
  private readonly bodies: PosedBodies;
  private readonly a: PlacedEnd;
  private readonly b: PlacedEnd;
  private readonly d: Vector;
  private readonly e: Vector;
  private readonly length: number;
  /** The direction of an offset. */
  private readonly carried: CarriedDirection | null;

  constructor(
    mechanism: Mechanism,
    private readonly measure: Measure,
    pose: Pose,
    rack: number,
  ) {
    this.bodies = new PosedBodies(mechanism, pose, rack);
    this.a = this.bodies.place(measure.a);
    this.b = this.bodies.place(measure.b);
    this.d = subtract(this.b.x, this.a.x);
    this.length = norm(this.d);
    if (measure.kind === "distance") {
      this.carried = null;
      this.e = scale(this.d, 1 / this.length);
      this.value = this.length;
    } else {
      const { carrier: body, direction, which } = measure;
      this.e = this.bodies.carry(body, designTriad(direction, mechanism.points)[which]);
      this.carried = { body, direction, which, now: this.e };
      this.value = dot(this.e, this.d);
    }
    this.row = this.bodies.newRow();
    addWrench(this.row, measure.b.body, this.e, cross(this.b.r, this.e));
    addWrench(this.row, measure.a.body, scale(this.e, -1), cross(this.e, this.a.r));
    this.addTurn(this.row, cross(this.e, this.d));
  }

  touches(body: number): boolean {
    const { a, b } = this.measure;
    return a.body === body || b.body === body || this.carried?.body === body;
  }

  changeByStep(column: number): MeasureChange {
    return this.change(this.bodies.byStep(column));
  }

  changeByPoint(point: number, axis: 0 | 1 | 2): MeasureChange | null {
    return pointsOfMeasure(this.measure).includes(point) ? this.change(this.bodies.byPoint(point, axis)) : null;
  }

  private change({ end, carried }: Disturbance): MeasureChange {
    const [a, b] = [end(this.a), end(this.b)];
    const dd = subtract(b.x, a.x);
    const along = dot(this.e, dd);
    const de = this.carried ? carried(this.carried) : scale(subtract(dd, scale(this.e, along)), 1 / this.length);
    const row = this.bodies.newRow();
    addWrench(row, this.measure.b.body, de, add(cross(b.r, this.e), cross(this.b.r, de)));
    addWrench(row, this.measure.a.body, scale(de, -1), scale(add(cross(a.r, this.e), cross(this.a.r, de)), -1));
    this.addTurn(row, add(cross(de, this.d), cross(this.e, dd)));
    return { value: this.carried ? along + dot(de, this.d) : along, row };
  }

  /** On the turn of the body that carries an offset's direction. */
  private addTurn(row: Float64Array, moment: Vector): void {
    if (this.carried) addMoment(row, this.carried.body, moment);
  }
}
