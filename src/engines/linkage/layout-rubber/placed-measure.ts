import { add, cross, dot, norm, rotate, scale, subtract, type Vector } from "#numeric";
import { turnOfDirection } from "../gradients.ts";
import { type Anchor, designTriad, GROUND, type Measure, type Mechanism } from "../mechanism.ts";
import type { Pose } from "../pose.ts";

/** Where one end of a measure stands, and from the origin of the body that carries it. */
interface PlacedEnd {
  readonly anchor: Anchor;
  readonly x: Vector;
  readonly r: Vector;
}

/** How both ends and the direction of an offset move: places, arms of the bodies that carry them, and the direction. */
interface Moves {
  readonly xa: Vector;
  readonly ra: Vector;
  readonly xb: Vector;
  readonly rb: Vector;
  readonly e: Vector;
}

/** Change of a measure's value and of its gradient row. */
export interface MeasureChange {
  readonly value: number;
  readonly row: Float64Array;
}

const NONE: Vector = [0, 0, 0];
const AXES: readonly Vector[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

/**
 * One measure between any two bodies at a pose: value, gradient by the steps (v, w) of all bodies, and the exact change of
 * both when bodies step or when a design point moves with the pose held. With E the line's direction (of a distance) or the
 * carried direction (of an offset) and d = x_b - x_a, the row is (E, r_b x E) on b, minus (E, r_a x E) on a, and E x d on the
 * turn of an offset's carrier.
 */
export class PlacedMeasure {
  readonly value: number;
  readonly row: Float64Array;
  /** The way its second end moves to make it grow; unit vector. */
  get along(): Vector {
    return this.e;
  }
  private readonly a: PlacedEnd;
  private readonly b: PlacedEnd;
  private readonly d: Vector;
  private readonly e: Vector;
  private readonly length: number;

  constructor(
    private readonly mechanism: Mechanism,
    private readonly measure: Measure,
    private readonly pose: Pose,
    rack: number,
  ) {
    this.a = this.place(measure.a, rack);
    this.b = this.place(measure.b, rack);
    this.d = subtract(this.b.x, this.a.x);
    this.length = norm(this.d);
    if (measure.kind === "distance") {
      this.e = scale(this.d, 1 / this.length);
      this.value = this.length;
    } else {
      this.e = this.carry(measure.carrier, designTriad(measure.direction, mechanism.points)[measure.which]);
      this.value = dot(this.e, this.d);
    }
    this.row = this.newRow();
    this.addTo(this.row, this.b, this.e, cross(this.b.r, this.e));
    this.addTo(this.row, this.a, scale(this.e, -1), cross(this.e, this.a.r));
    this.addTurn(this.row, cross(this.e, this.d));
  }

  /** Whether the measure changes with the steps of a body at all. */
  touches(body: number): boolean {
    const { a, b } = this.measure;
    return a.body === body || b.body === body || (this.measure.kind === "offset" && this.measure.carrier === body);
  }

  /** Change with part `column` of the steps of all bodies: three shifts, then three turns a body. */
  changeByStep(column: number): MeasureChange {
    const body = Math.floor(column / 6);
    const part = AXES[column % 3] as Vector;
    const turns = column % 6 > 2;
    const of = (end: PlacedEnd): { readonly x: Vector; readonly r: Vector } => {
      if (end.anchor.body !== body) return { x: NONE, r: NONE };
      if (!turns) return { x: part, r: NONE };
      const arm = cross(part, end.r);
      return { x: arm, r: arm };
    };
    const [a, b] = [of(this.a), of(this.b)];
    const carried = this.measure.kind === "offset" && this.measure.carrier === body && turns;
    return this.change({ xa: a.x, ra: a.r, xb: b.x, rb: b.r, e: carried ? cross(part, this.e) : NONE });
  }

  /** Change with a coordinate of a design point, all bodies held; null where the measure does not depend on it. */
  changeByPoint(point: number, axis: 0 | 1 | 2): MeasureChange | null {
    const { measure } = this;
    const of = ({ anchor }: PlacedEnd): Vector =>
      anchor.point === point ? this.carry(anchor.body, AXES[axis] as Vector) : NONE;
    const [a, b] = [of(this.a), of(this.b)];
    const turned =
      measure.kind === "offset"
        ? turnOfDirection(measure.direction, measure.which, point, this.mechanism.points)?.[axis]
        : undefined;
    if (a === NONE && b === NONE && !turned) return null;
    const e = turned && measure.kind === "offset" ? this.carry(measure.carrier, turned) : NONE;
    return this.change({ xa: a, ra: a, xb: b, rb: b, e });
  }

  private change({ xa, ra, xb, rb, e }: Moves): MeasureChange {
    const dd = subtract(xb, xa);
    const along = dot(this.e, dd);
    const isDistance = this.measure.kind === "distance";
    const de = isDistance ? scale(subtract(dd, scale(this.e, along)), 1 / this.length) : e;
    const row = this.newRow();
    this.addTo(row, this.b, de, add(cross(rb, this.e), cross(this.b.r, de)));
    this.addTo(row, this.a, scale(de, -1), scale(add(cross(ra, this.e), cross(this.a.r, de)), -1));
    this.addTurn(row, add(cross(de, this.d), cross(this.e, dd)));
    return { value: isDistance ? along : along + dot(de, this.d), row };
  }

  private newRow(): Float64Array {
    return new Float64Array(6 * this.mechanism.origins.length);
  }

  private addTo(row: Float64Array, { anchor: { body } }: PlacedEnd, force: Vector, moment: Vector): void {
    if (body === GROUND) return;
    [...force, ...moment].forEach((part, c) => {
      row[6 * body + c] = (row[6 * body + c] as number) + part;
    });
  }

  /** On the turn of the body that carries an offset's direction. */
  private addTurn(row: Float64Array, moment: Vector): void {
    const { measure } = this;
    if (measure.kind !== "offset" || measure.carrier === GROUND) return;
    moment.forEach((part, c) => {
      const at = 6 * measure.carrier + 3 + c;
      row[at] = (row[at] as number) + part;
    });
  }

  private carry(body: number, v: Vector): Vector {
    return body === GROUND ? v : rotate(this.pose.r.subarray(9 * body, 9 * body + 9), v);
  }

  private place(anchor: Anchor, rack: number): PlacedEnd {
    const { body, point, onRack } = anchor;
    const p = this.mechanism.points[point] as Vector;
    if (body === GROUND) return { anchor, x: [p[0], p[1] + (onRack ? rack : 0), p[2]], r: NONE };
    const origin = this.mechanism.origins[body] as Vector;
    const shift = (c: number): number => this.pose.t[3 * body + c] as number;
    const r = this.carry(body, subtract(p, origin));
    return { anchor, x: add(add(origin, [shift(0), shift(1), shift(2)]), r), r };
  }
}
