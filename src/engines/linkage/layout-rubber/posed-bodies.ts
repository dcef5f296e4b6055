import { add, cross, rotate, subtract, type Vector } from "#numeric";
import { turnOfDirection } from "../gradients.ts";
import { type Anchor, type Direction, GROUND, type Mechanism } from "../mechanism.ts";
import type { Pose } from "../pose.ts";

/** Where an anchor stands, and from the origin of the body that carries it. */
export interface PlacedEnd {
  readonly anchor: Anchor;
  readonly x: Vector;
  readonly r: Vector;
}

/** A unit direction of the design that a body carries, and where it points now. */
export interface CarriedDirection {
  readonly body: number;
  readonly direction: Direction;
  readonly which: 0 | 1 | 2;
  readonly now: Vector;
}

/** A step of one body, or a coordinate of a design point with all bodies held: how places and directions change with it. */
export interface Disturbance {
  /** Change of an end's place and of its arm from the body's origin. */
  readonly end: (end: PlacedEnd) => { readonly x: Vector; readonly r: Vector };
  readonly carried: (direction: CarriedDirection) => Vector;
  /** How a body turns, and how a direction of the design does. */
  readonly turn: (body: number) => Vector;
  readonly design: (direction: Direction, which: 0 | 1 | 2) => Vector;
}

/** Change of a measure's value and of its gradient row. */
export interface MeasureChange {
  readonly value: number;
  readonly row: Float64Array;
}

const NONE: Vector = [0, 0, 0];
const STILL = { x: NONE, r: NONE };
const AXES: readonly Vector[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

/** The body that part `column` of the steps of all bodies moves. */
export const bodyOfColumn = (column: number): number => Math.floor(column / 6);

/** All bodies of a mechanism at one pose and rack position: places of anchors, directions they carry, rows over their steps. */
export class PosedBodies {
  constructor(
    readonly mechanism: Mechanism,
    private readonly pose: Pose,
    private readonly rack: number,
  ) {}

  /** A direction as the body has turned it; the ground's stays. */
  carry(body: number, v: Vector): Vector {
    return body === GROUND ? v : rotate(this.pose.r.subarray(9 * body, 9 * body + 9), v);
  }

  /** The same turned back: a direction of the car as the body sees it. */
  carryBack(body: number, [x, y, z]: Vector): Vector {
    if (body === GROUND) return [x, y, z];
    const r = this.pose.r.subarray(9 * body, 9 * body + 9);
    const column = (j: number): number => (r[j] as number) * x + (r[3 + j] as number) * y + (r[6 + j] as number) * z;
    return [column(0), column(1), column(2)];
  }

  /** Row-major turn of a body from design. */
  turnOf(body: number): ArrayLike<number> {
    return body === GROUND ? [1, 0, 0, 0, 1, 0, 0, 0, 1] : this.pose.r.subarray(9 * body, 9 * body + 9);
  }

  place(anchor: Anchor): PlacedEnd {
    const { body, point, onRack } = anchor;
    const p = this.mechanism.points[point] as Vector;
    if (body === GROUND) return { anchor, x: [p[0], p[1] + (onRack ? this.rack : 0), p[2]], r: NONE };
    const origin = this.mechanism.origins[body] as Vector;
    const shift = (c: number): number => this.pose.t[3 * body + c] as number;
    const r = this.carry(body, subtract(p, origin));
    return { anchor, x: add(add(origin, [shift(0), shift(1), shift(2)]), r), r };
  }

  newRow(): Float64Array {
    return new Float64Array(6 * this.mechanism.origins.length);
  }

  /** Part `column` of the steps of all bodies: three shifts, then three turns a body. */
  byStep(column: number): Disturbance {
    const body = bodyOfColumn(column);
    const part = AXES[column % 3] as Vector;
    const turns = column % 6 > 2;
    return {
      end: ({ anchor, r }) => {
        if (anchor.body !== body) return STILL;
        if (!turns) return { x: part, r: NONE };
        const arm = cross(part, r);
        return { x: arm, r: arm };
      },
      carried: (direction) => (turns && direction.body === body ? cross(part, direction.now) : NONE),
      turn: (of) => (turns && of === body ? part : NONE),
      design: () => NONE,
    };
  }

  /** A coordinate of a design point, all bodies held. */
  byPoint(point: number, axis: 0 | 1 | 2): Disturbance {
    const design: Disturbance["design"] = (direction, which) =>
      turnOfDirection(direction, which, point, this.mechanism.points)?.[axis] ?? NONE;
    return {
      end: ({ anchor }) => {
        if (anchor.point !== point) return STILL;
        const moved = this.carry(anchor.body, AXES[axis] as Vector);
        return { x: moved, r: moved };
      },
      carried: ({ body, direction, which }) => this.carry(body, design(direction, which)),
      turn: () => NONE,
      design,
    };
  }
}

/** Adds a force and a moment on a body to a row; the ground has no part in it. */
export function addWrench(row: Float64Array, body: number, force: Vector, moment: Vector): void {
  if (body === GROUND) return;
  for (let c = 0; c < 3; c++) {
    row[6 * body + c] = (row[6 * body + c] as number) + (force[c] as number);
    row[6 * body + 3 + c] = (row[6 * body + 3 + c] as number) + (moment[c] as number);
  }
}

/** Adds a moment alone. */
export const addMoment = (row: Float64Array, body: number, moment: Vector): void => addWrench(row, body, NONE, moment);
