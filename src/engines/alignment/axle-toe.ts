import type { Metres, Radians } from "#quantity";

/** Toe of one wheel as a length: how much closer the front of the rim is than its middle line, over its diameter. */
export function computeToeLength(toe: Radians, diameter: Metres): Metres {
  return diameter * Math.sin(toe);
}

/** Toe of one wheel from a length over a rim diameter; null where the length is longer than the diameter. */
export function computeToeAngle(length: Metres, diameter: Metres): Radians | null {
  const angle = Math.asin(length / diameter);
  return Number.isFinite(angle) ? angle : null;
}

/** What both wheels of an axle say together. */
export interface AxleToe {
  readonly total: Radians;
  /** Sum of both wheels' toe as lengths over the rim diameter. */
  readonly totalLength: Metres;
  /** Where the axle points, positive to the left. */
  readonly thrust: Radians;
}

/** Total toe and thrust angle of an axle from the toe of both wheels (positive in) and a rim diameter. */
export function computeAxleToe(left: Radians, right: Radians, diameter: Metres): AxleToe {
  return {
    total: left + right,
    totalLength: computeToeLength(left, diameter) + computeToeLength(right, diameter),
    thrust: (right - left) / 2,
  };
}
