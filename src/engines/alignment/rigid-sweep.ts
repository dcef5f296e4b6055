import { computeSpinAxis } from "#engines/linkage";
import { cross, dot, norm, scale, subtract, unitVector, type Vector } from "#numeric";
import type { Radians } from "#quantity";

/** A steering axis by its two angles: caster positive when its top leans back, inclination positive when inward. */
export interface SteeringAxisAngles {
  readonly caster: Radians;
  readonly inclination: Radians;
}

/** A wheel by its two angles: camber positive top outward, toe positive in. */
export interface WheelAngles {
  readonly camber: Radians;
  readonly toe: Radians;
}

/** Unit direction of a steering axis of a left wheel, upward, vehicle axes. */
export function computeAxisDirection({ caster, inclination }: SteeringAxisAngles): Vector {
  return unitVector([-Math.tan(caster), -Math.tan(inclination), 1]);
}

/**
 * Camber of a wheel turned rigidly about a fixed steering axis until its toe is `toe`; null where it cannot be turned
 * so far. Closed form: n_x cos toe = n_y sin toe is a sine wave in the turn about the axis; of its two roots the one
 * with the spin axis outboard and the smaller turn is taken. Source: check-values-geometry.
 */
export function computeCamberAtToe(axis: SteeringAxisAngles, wheel: WheelAngles, toe: Radians): Radians | null {
  const k = computeAxisDirection(axis);
  const n = computeSpinAxis(wheel.camber, wheel.toe);
  const along = scale(k, dot(k, n));
  const across = subtract(n, along);
  const third = cross(k, n);
  const off = (v: Vector): number => v[0] * Math.cos(toe) - v[1] * Math.sin(toe);
  const swing = Math.hypot(off(across), off(third));
  const share = -off(along) / swing;
  if (!(Math.abs(share) <= 1)) return null;
  const middle = Math.atan2(off(third), off(across));
  const turns = [middle + Math.acos(share), middle - Math.acos(share)].map((x) => Math.atan2(Math.sin(x), Math.cos(x)));
  const turned = turns
    .sort((a, b) => Math.abs(a) - Math.abs(b))
    .map((turn): Vector => {
      const c = Math.cos(turn);
      const s = Math.sin(turn);
      return [
        along[0] + c * across[0] + s * third[0],
        along[1] + c * across[1] + s * third[1],
        along[2] + c * across[2] + s * third[2],
      ];
    });
  const found = turned.find((v) => v[0] * Math.sin(toe) + v[1] * Math.cos(toe) > 0);
  return found ? Math.atan2(-found[2], Math.hypot(found[0], found[1])) : null;
}

/**
 * Steering axis from three readings of one wheel at different steer: the spin axis keeps its angle to a fixed axis, so
 * the axis is across both differences of spin axes. Exact; null where the three readings lie on one line.
 */
export function computeSteeringAxisFromReadings(
  readings: readonly [WheelAngles, WheelAngles, WheelAngles],
): SteeringAxisAngles | null {
  const [a, b, c] = readings.map((r) => computeSpinAxis(r.camber, r.toe)) as [Vector, Vector, Vector];
  const across = cross(subtract(b, a), subtract(c, a));
  // 1e-9: readings that differ by less than about 0.002 deg say nothing of an axis (invented bound).
  if (norm(across) < 1e-9) return null;
  const up = across[2] < 0 ? scale(across, -1) : across;
  return { caster: Math.atan2(-up[0], up[2]), inclination: Math.atan2(-up[1], up[2]) };
}
