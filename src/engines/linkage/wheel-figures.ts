import { add, cross, dot, norm, rotate, scale, subtract, type Vector } from "#numeric";
import type { WheelLinkage } from "./corner-linkage.ts";
import { computeSpinAxis } from "./corner-linkage.ts";
import type { Pose } from "./pose.ts";

/** A rigid-body velocity: v of the wheel centre, w the rotation, per unit of whatever drives it. */
export interface Screw {
  readonly v: Vector;
  readonly w: Vector;
}

/** What a pose says of the wheel; metres, radians, vehicle frame, left side. */
export interface WheelAttitude {
  readonly centre: Vector;
  readonly contact: Vector;
  /** Unit spin axis, outboard. */
  readonly axis: Vector;
  readonly camber: number;
  readonly toe: number;
  /** Rotation about the wheel's own axis: positive, top forward; 0 at design. */
  readonly spin: number;
  /** Unit vectors in the ground plane: where the wheel points, and to its outer side. */
  readonly heading: Vector;
  readonly lateral: Vector;
}

/** Below this rotation (rad/m) a centre counts as lying at infinity: 1e-13 rad/mm. */
const NO_ROTATION = 1e-10;

/** Rotation of the wheel frame from the body axes: Rz(-toe) Rx(-camber), row-major. */
function wheelFrame(camber: number, toe: number): number[] {
  const ct = Math.cos(toe);
  const st = Math.sin(toe);
  const cc = Math.cos(camber);
  const sc = Math.sin(camber);
  return [ct, st * cc, st * sc, -st, ct * cc, ct * sc, 0, -sc, cc];
}

/**
 * Attitude of the wheel at a pose, in closed form: camber = asin(-n_z), toe = atan2(n_x, n_y), and the spin that is
 * left when the wheel frame is written Rz(-toe) Rx(-camber) Ry(spin). Source: definitions in docs/method/linkage.md.
 */
export function computeAttitude(linkage: WheelLinkage, pose: Pose): WheelAttitude {
  const { wheel } = linkage;
  const axis = rotate(pose.r, linkage.spinAxis);
  const h = Math.hypot(axis[0], axis[1]);
  const camber = Math.atan2(-axis[2], h);
  const toe = Math.atan2(axis[0], axis[1]);
  const design = wheelFrame(wheel.camber, wheel.toe);
  const now = wheelFrame(camber, toe);
  // First column of the carried design frame, seen in the wheel frame of this toe and camber.
  const carriedX = rotate(pose.r, [design[0] as number, design[3] as number, design[6] as number]);
  const carriedZ = rotate(pose.r, [design[2] as number, design[5] as number, design[8] as number]);
  const nowX: Vector = [now[0] as number, now[3] as number, now[6] as number];
  const spin = Math.atan2(dot(nowX, carriedZ), dot(nowX, carriedX));
  const centre = add(wheel.centre, [pose.t[0] as number, pose.t[1] as number, pose.t[2] as number]);
  return {
    centre,
    contact: add(centre, contactOffset(axis, wheel.loadedRadius)),
    axis,
    camber,
    toe,
    spin,
    heading: [axis[1] / h, -axis[0] / h, 0],
    lateral: [axis[0] / h, axis[1] / h, 0],
  };
}

/** Contact patch at design, metres. */
export function computeDesignContact(linkage: WheelLinkage): Vector {
  const { wheel } = linkage;
  return add(wheel.centre, contactOffset(computeSpinAxis(wheel.camber, wheel.toe), wheel.loadedRadius));
}

function contactOffset(axis: Vector, radius: number): Vector {
  const h = Math.hypot(axis[0], axis[1]);
  return [(radius * axis[2] * axis[0]) / h, (radius * axis[2] * axis[1]) / h, -radius * h];
}

/** Rates of camber, toe, spin and of the migrating contact patch for a screw, per unit of its drive. */
export function computeAttitudeRates(
  at: WheelAttitude,
  screw: Screw,
  loadedRadius: number,
): { camber: number; toe: number; spin: number; contact: Vector } {
  const n = at.axis;
  const dn = cross(screw.w, n);
  const h2 = n[0] * n[0] + n[1] * n[1];
  const h = Math.sqrt(h2);
  const toe = (dn[0] * n[1] - n[0] * dn[1]) / h2;
  const camber = -dn[2] / h;
  const spin = dot(screw.w, at.lateral) / h;
  const offset: Vector = [
    loadedRadius * ((dn[2] * n[0] + n[2] * dn[0]) / h + (n[2] * n[0] * n[2] * dn[2]) / (h2 * h)),
    loadedRadius * ((dn[2] * n[1] + n[2] * dn[1]) / h + (n[2] * n[1] * n[2] * dn[2]) / (h2 * h)),
    (loadedRadius * n[2] * dn[2]) / h,
  ];
  return { camber, toe, spin, contact: add(screw.v, offset) };
}

/** Velocity of the knuckle-fixed point that stands at `point`. */
export function velocityAt(at: WheelAttitude, screw: Screw, point: Vector): Vector {
  return add(screw.v, cross(screw.w, subtract(point, at.centre)));
}

/** Point [y, z] of the plane x = const through `through` that does not move in that plane; null at infinity. */
export function computeFrontViewCentre(
  at: WheelAttitude,
  screw: Screw,
  through: Vector,
): readonly [number, number] | null {
  const { v, w } = screw;
  if (Math.abs(w[0]) < NO_ROTATION) return null;
  const rx = through[0] - at.centre[0];
  return [at.centre[1] + (w[1] * rx - v[2]) / w[0], at.centre[2] + (v[1] + w[2] * rx) / w[0]];
}

/** Point [x, z] of the plane y = const through `through` that does not move in that plane; null at infinity. */
export function computeSideViewCentre(
  at: WheelAttitude,
  screw: Screw,
  through: Vector,
): readonly [number, number] | null {
  const { v, w } = screw;
  if (Math.abs(w[1]) < NO_ROTATION) return null;
  const ry = through[1] - at.centre[1];
  return [at.centre[0] + (v[2] + w[0] * ry) / w[1], at.centre[2] + (w[2] * ry - v[0]) / w[1]];
}

/** Heights above this wheel's contact patch: by the instant centre, and by the migrating contact patch. */
export function computeRollCentre(
  at: WheelAttitude,
  screw: Screw,
  loadedRadius: number,
): { construction: number; migrating: number } {
  const fixed = velocityAt(at, screw, at.contact);
  const moving = computeAttitudeRates(at, screw, loadedRadius).contact;
  return { construction: (at.contact[1] * fixed[1]) / fixed[2], migrating: (at.contact[1] * moving[1]) / moving[2] };
}

/** The steering axis as the screw axis of steer. */
export interface SteeringAxis {
  readonly direction: Vector;
  readonly caster: number;
  readonly inclination: number;
  /** Where it meets the height of the contact patch. */
  readonly ground: Vector;
  readonly trail: number;
  readonly scrub: number;
  readonly centreTrail: number;
  readonly centreOffset: number;
  /** Metres per radian along the axis. */
  readonly pitch: number;
  readonly toePerRack: number;
  readonly camberPerRack: number;
}

/** Steering axis from the screw of a rack movement; null where the wheel does not turn. */
export function computeSteeringAxis(at: WheelAttitude, screw: Screw, loadedRadius: number): SteeringAxis | null {
  const turn = norm(screw.w);
  if (turn < NO_ROTATION) return null;
  const sign = screw.w[2] < 0 ? -1 : 1;
  const direction = scale(screw.w, sign / turn);
  const through = add(at.centre, scale(cross(screw.w, screw.v), 1 / (turn * turn)));
  const atHeight = (z: number): Vector => add(through, scale(direction, (z - through[2]) / direction[2]));
  const ground = atHeight(at.contact[2]);
  const level = atHeight(at.centre[2]);
  const rates = computeAttitudeRates(at, screw, loadedRadius);
  return {
    direction,
    caster: Math.atan2(-direction[0], direction[2]),
    inclination: Math.atan2(-direction[1], direction[2]),
    ground,
    trail: dot(subtract(ground, at.contact), at.heading),
    scrub: dot(subtract(at.contact, ground), at.lateral),
    centreTrail: dot(subtract(level, at.centre), at.heading),
    centreOffset: dot(subtract(at.centre, level), at.lateral),
    pitch: dot(screw.w, screw.v) / (turn * turn),
    toePerRack: rates.toe,
    camberPerRack: rates.camber,
  };
}
