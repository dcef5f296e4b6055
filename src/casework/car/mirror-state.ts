import type { BalancedWheel, CarBalanceState, WheelPlace } from "#engines/linkage";

/** The wheel of the other side. */
export const mirroredPlace: Readonly<Record<WheelPlace, WheelPlace>> = {
  frontLeft: "frontRight",
  frontRight: "frontLeft",
  rearLeft: "rearRight",
  rearRight: "rearLeft",
};

/** A car whose sides are alike in the bend to the other side. */
export function mirrorState(s: CarBalanceState): CarBalanceState {
  const other = (wheel: BalancedWheel): BalancedWheel => ({ ...wheel, lateral: -wheel.lateral });
  return {
    ...s,
    roll: -s.roll,
    frontLeft: other(s.frontRight),
    frontRight: other(s.frontLeft),
    rearLeft: other(s.rearRight),
    rearRight: other(s.rearLeft),
    moved: { front: -s.moved.front, rear: -s.moved.rear },
  };
}
