import { add, dot, mirrorY, rotate, scale, subtract, type Vector } from "#numeric";
import type { Metres, Radians } from "#quantity";
import type { LengthAtPose } from "../describe-position.ts";
import type { CornerGeometry } from "../geometry.ts";
import { computeSeatLength, seatRow } from "../seat.ts";
import { TravelSweep } from "../solve-travel.ts";
import { computeDesignContact, velocityAt } from "../wheel-figures.ts";

/** How the body stands against its design position: about a point of it, ISO 8855 axes. */
export interface BodyMotion {
  /** Up. */
  readonly heave: Metres;
  /** Left side up. */
  readonly roll: Radians;
  /** Nose down. */
  readonly pitch: Radians;
  /** Point of the body that only rises when it turns. */
  readonly about: Vector;
}

/** One wheel of a car on level ground; angles against the ground, as on either side of an alignment stand. */
export interface WheelOnGround {
  /** Wheel-centre travel against the body, bump positive. */
  readonly travel: Metres;
  readonly camber: Radians;
  readonly toe: Radians;
  /** Contact patch on the ground, its own side. */
  readonly contact: Vector;
  readonly spring: LengthAtPose | null;
  /** How open the wheel stands above or below the ground, metres. */
  readonly gap: Metres;
}

export type Side = "left" | "right";

/** A wheel is on the ground within this, metres; rounding of places of some metres stays below it. */
const SETTLED = 1e-13;
const LIMIT = 20;

/** Rotation of the body, row-major: first rolled about its x, then pitched about the y of the ground. */
export function bodyRotation({ roll, pitch }: BodyMotion): readonly number[] {
  const [cr, sr, cp, sp] = [Math.cos(roll), Math.sin(roll), Math.cos(pitch), Math.sin(pitch)];
  return [cp, sp * sr, sp * cr, 0, cr, -sr, -sp, cp * sr, cp * cr];
}

/**
 * The wheel of one corner where the body stands as told and the tyre (a rigid thin disc) touches level ground at its design
 * height. Travel by Newton: the lowest point rises with the wheel by g.(v + w x c), g the upright of the ground seen from
 * the body. A right wheel is the mirror image of the left geometry. Null where the branch ends before the ground, or Newton
 * does not settle.
 */
export function placeWheel(
  geometry: CornerGeometry,
  side: Side,
  motion: BodyMotion,
  rack: Metres,
  sweep: TravelSweep = new TravelSweep(geometry),
): WheelOnGround | null {
  const mine: BodyMotion = side === "left" ? motion : { ...motion, roll: -motion.roll, about: mirrorY(motion.about) };
  const turned = bodyRotation(mine);
  const onGround = (p: Vector): Vector =>
    add(add(mine.about, [0, 0, mine.heave]), rotate(turned, subtract(p, mine.about)));
  const up: Vector = [turned[6] as number, turned[7] as number, turned[8] as number];
  const radius = geometry.wheel.loadedRadius;
  const ground = computeDesignContact(sweep.linkage)[2];
  let travel = 0;
  for (let iteration = 0; iteration < LIMIT; iteration++) {
    const p = sweep.solve({ travel, rack: side === "left" ? rack : -rack });
    if ("foldAt" in p) return null;
    const { centre, axis } = p.attitude;
    const across = subtract(up, scale(axis, dot(up, axis)));
    const lowest = subtract(centre, scale(across, radius / Math.sqrt(dot(across, across))));
    const gap = onGround(lowest)[2] - ground;
    if (Math.abs(gap) < SETTLED) {
      const n = rotate(turned, axis);
      const contact = onGround(lowest);
      const spring = geometry.spring && computeSeatLength(geometry, geometry.spring, p.pose);
      return {
        travel,
        camber: Math.atan2(-n[2], Math.hypot(n[0], n[1])),
        toe: Math.atan2(n[0], n[1]),
        contact: side === "left" ? contact : mirrorY(contact),
        spring: spring ? { length: spring.length, row: seatRow(spring) } : null,
        gap,
      };
    }
    travel -= gap / dot(up, velocityAt(p.attitude, p.screw, lowest));
  }
  return null;
}

/** An anti-roll bar: torsion rate, lever from its axis to the drop links, and how its links rise with the wheels. */
export interface AntiRollBar {
  /** N m per radian of twist. */
  readonly torsion: number;
  readonly lever: Metres;
  /** Rise of a drop link per rise of its wheel. */
  readonly ratio: number;
}

/** What a bar does between two wheels. */
export interface BarState {
  readonly twist: Radians;
  /** Force of its drop link on the left side, upward positive on the moving part; the right one's is its opposite. */
  readonly leftLink: number;
  /** The same at the wheel. */
  readonly leftWheel: number;
}

/** A bar twisted by the difference of two wheels' travels (metres); small angles of its levers. */
export function computeBar({ torsion, lever, ratio }: AntiRollBar, left: Metres, right: Metres): BarState {
  const twist = (ratio * (left - right)) / lever;
  const leftLink = (-torsion * twist) / lever;
  return { twist, leftLink, leftWheel: leftLink * ratio };
}

/** Both axles' left corners, front first, as one car on level ground. */
export interface CarOnGround {
  readonly frontLeft: WheelOnGround;
  readonly frontRight: WheelOnGround;
  readonly rearLeft: WheelOnGround;
  readonly rearRight: WheelOnGround;
}

/** All four wheels for one motion of the body; the rack steers the front. Null where a wheel cannot follow. */
export function placeCar(
  front: CornerGeometry,
  rear: CornerGeometry,
  motion: BodyMotion,
  rack: Metres,
): CarOnGround | null {
  const [frontSweep, rearSweep] = [new TravelSweep(front), new TravelSweep(rear)];
  const frontLeft = placeWheel(front, "left", motion, rack, frontSweep);
  const frontRight = placeWheel(front, "right", motion, rack, frontSweep);
  const rearLeft = placeWheel(rear, "left", motion, 0, rearSweep);
  const rearRight = placeWheel(rear, "right", motion, 0, rearSweep);
  return frontLeft && frontRight && rearLeft && rearRight ? { frontLeft, frontRight, rearLeft, rearRight } : null;
}
