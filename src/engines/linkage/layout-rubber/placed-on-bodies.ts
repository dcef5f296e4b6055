import { designTriad, type Mechanism } from "../mechanism.ts";
import type { Pose } from "../pose.ts";
import type { Placed } from "./placed-measure.ts";
import { type CarriedDirection, type Disturbance, type MeasureChange, PosedBodies } from "./posed-bodies.ts";
import { type About, bodiesOf, pointsOfElastic, type SeatedOffset, type TurnMeasure } from "./turn-measure.ts";

/** A direction of the design that a body carries, as it lies now. */
export const carriedBy = (bodies: PosedBodies, body: number, { direction, which }: About): CarriedDirection => ({
  body,
  direction,
  which,
  now: bodies.carry(body, designTriad(direction, bodies.mechanism.points)[which]),
});

/** What measures by turns and by a seat share: which bodies and points they change with. */
export abstract class PlacedOnBodies<M extends TurnMeasure | SeatedOffset> implements Placed {
  abstract readonly value: number;
  abstract readonly row: Float64Array;
  protected readonly bodies: PosedBodies;

  constructor(
    mechanism: Mechanism,
    protected readonly measure: M,
    pose: Pose,
    rack: number,
  ) {
    this.bodies = new PosedBodies(mechanism, pose, rack);
  }

  touches(body: number): boolean {
    return bodiesOf(this.measure).includes(body);
  }

  changeByStep(column: number): MeasureChange {
    return this.change(this.bodies.byStep(column));
  }

  changeByPoint(point: number, axis: 0 | 1 | 2): MeasureChange | null {
    return pointsOfElastic(this.measure).includes(point) ? this.change(this.bodies.byPoint(point, axis)) : null;
  }

  protected abstract change(by: Disturbance): MeasureChange;
}
