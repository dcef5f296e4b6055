import type { Metres, Radians } from "#quantity";

/** Front pivots (where the steering axes meet the ground) and the rear axle they must turn about. */
export interface TurnGeometry {
  /** Across, between the two pivots. */
  readonly pivots: Metres;
  readonly wheelbase: Metres;
}

/**
 * Angle of the outer wheel at which both front wheels and the rear axle roll about one point: cot outer - cot inner =
 * pivots/wheelbase. Angles from straight ahead, 0 to pi; 0 gives 0. Source: check-values-geometry.
 */
export function computeCorrectOuterAngle(inner: Radians, turn: TurnGeometry): Radians {
  return Math.atan2(Math.sin(inner), Math.cos(inner) + (turn.pivots / turn.wheelbase) * Math.sin(inner));
}

/** Both wheel angles of a turn without slip, and the radius the outer front wheel runs on. */
export interface TurnAngles {
  readonly inner: Radians;
  readonly outer: Radians;
  readonly outerRadius: Metres;
}

/**
 * Wheel angles for a turn centre at `radius` from the middle of the rear axle, along the line of that axle.
 * Null where the centre lies between the wheels, so that they would turn against each other.
 */
export function computeTurnAngles(radius: Metres, turn: TurnGeometry): TurnAngles | null {
  if (!(radius > turn.pivots / 2)) return null;
  const outerReach = radius + turn.pivots / 2;
  return {
    inner: Math.atan2(turn.wheelbase, radius - turn.pivots / 2),
    outer: Math.atan2(turn.wheelbase, outerReach),
    outerRadius: Math.hypot(turn.wheelbase, outerReach),
  };
}

/** Two equal steering arms behind the pivots and the rod between them, in the plane of the ground. */
export interface SteeringTrapezoid {
  readonly pivots: Metres;
  readonly arm: Metres;
  readonly rod: Metres;
}

/** Angle of each arm inward from straight back, wheels straight ahead; null where rod and arms cannot meet. */
export function computeTrapezoidArmAngle({ pivots, arm, rod }: SteeringTrapezoid): Radians | null {
  const angle = Math.asin((pivots - rod) / (2 * arm));
  return Number.isFinite(angle) ? angle : null;
}

/**
 * Outer wheel angle of a steering trapezoid for an inner wheel angle, in closed form (two circles), on the branch that
 * goes through straight ahead; null where the linkage does not reach. Source: check-values-geometry.
 */
export function computeTrapezoidOuterAngle(trapezoid: SteeringTrapezoid, inner: Radians): Radians | null {
  const { pivots, arm, rod } = trapezoid;
  const straight = computeTrapezoidArmAngle(trapezoid);
  if (straight === null) return null;
  // Inner pivot at the origin, the outer one at (pivots, 0), forward up; the arms point back and toward each other.
  const innerArm = straight - Math.PI / 2 + inner;
  const dx = pivots - arm * Math.cos(innerArm);
  const dy = -arm * Math.sin(innerArm);
  const distance = Math.hypot(dx, dy);
  const cosine = (rod * rod - arm * arm - distance * distance) / (2 * arm * distance);
  if (!(Math.abs(cosine) <= 1)) return null;
  // Straight ahead the cross product of (dx, dy) and the outer arm is -rod arm cos(straight): the lower branch.
  const outerArm = Math.atan2(dy, dx) - Math.acos(cosine);
  return outerArm + Math.PI / 2 + straight;
}
