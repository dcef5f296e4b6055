import { add, cross, dot, norm, rotate, scale, subtract, unitVector, type Vector } from "#numeric";
import type { CornerGeometry, LinkGeometry, SpringGeometry } from "./geometry.ts";
import type { Pose } from "./pose.ts";

/**
 * Length of a spring or damper as a function of the pose, with its exact first and second derivatives by the
 * position x of the one knuckle point that moves it (the seat itself, or the outer joint of its link or arm).
 */
export interface SeatLength {
  readonly length: number;
  /** Where the moving knuckle point stands, and from the wheel centre. */
  readonly x: Vector;
  readonly r: Vector;
  readonly gradient: Vector;
  /** Row-major 3 by 3. */
  readonly curvature: readonly number[];
  /** Where the seat itself stands, for drawing. */
  readonly seat: Vector;
}

/** factor (1 - u u'), row-major. */
function identityMinus([x, y, z]: Vector, factor: number): number[] {
  const [xy, xz, yz] = [-factor * x * y, -factor * x * z, -factor * y * z];
  return [factor * (1 - x * x), xy, xz, xy, factor * (1 - y * y), yz, xz, yz, factor * (1 - z * z)];
}

/** The knuckle point that moves a seat, in design coordinates. */
export function movingPoint(geometry: CornerGeometry, spring: SpringGeometry): Vector {
  const { seat } = spring;
  if (seat.on === "knuckle") return seat.moving;
  const name = seat.on === "link" ? seat.link : seat.links[0];
  const link = geometry.links.find((l) => l.name === name);
  if (!link) throw new Error(`seat on a link that is not there: ${name}`);
  return link.outer;
}

/**
 * On the knuckle: |x - top|. On a link: the point at the same fraction of its line from the design inner point
 * (a rack does not carry it). On an arm of two links: fixed to the rigid arm, which turns about the line of its inner
 * points by the angle of the outer joint alone.
 */
export function computeSeatLength(geometry: CornerGeometry, spring: SpringGeometry, pose: Pose): SeatLength {
  const centre = geometry.wheel.centre;
  const design = movingPoint(geometry, spring);
  const r = rotate(pose.r, subtract(design, centre));
  const x = add(add(centre, [pose.t[0] as number, pose.t[1] as number, pose.t[2] as number]), r);
  const { seat, body } = spring;
  if (seat.on === "arm") return armSeat(geometry, spring, seat, x, r);
  const fraction = seat.on === "link" ? seat.fraction : 1;
  const inner = seat.on === "link" ? linkOf(geometry, seat.link).inner : x;
  const at = seat.on === "link" ? add(inner, scale(subtract(x, inner), fraction)) : x;
  const line = subtract(at, body);
  const length = norm(line);
  const u = scale(line, 1 / length);
  return {
    length,
    x,
    r,
    gradient: scale(u, fraction),
    curvature: identityMinus(u, (fraction * fraction) / length),
    seat: at,
  };
}

function linkOf(geometry: CornerGeometry, name: string) {
  const link = geometry.links.find((l) => l.name === name);
  if (!link) throw new Error(`seat on a link that is not there: ${name}`);
  return link;
}

/** How a point x turns about the line of an arm's inner points: the angle from design with its exact derivatives by x. */
export interface ArmAngle {
  /** Unit vector along the line, from the first link's inner point to the second's. */
  readonly hinge: Vector;
  /** Across it: toward the outer joint at design, and the third direction. */
  readonly e2: Vector;
  readonly e3: Vector;
  /** Cosine and sine of the angle. */
  readonly c: number;
  readonly s: number;
  readonly gradient: Vector;
  /** Row-major 3 by 3. */
  readonly curvature: readonly number[];
}

/** Angle of an arm of two links with one outer joint, which stands at x; the inner points must lie apart. */
export function computeArmAngle(first: LinkGeometry, second: LinkGeometry, x: Vector): ArmAngle {
  const hinge = unitVector(subtract(second.inner, first.inner));
  const across = (p: Vector): Vector => subtract(p, scale(hinge, dot(p, hinge)));
  const e2 = unitVector(across(subtract(first.outer, first.inner)));
  const e3 = cross(hinge, e2);
  const d = subtract(x, first.inner);
  const a = dot(d, e2);
  const b = dot(d, e3);
  const q = a * a + b * b;
  const h = Math.sqrt(q);
  // Second derivatives of atan2.
  const h22 = (2 * a * b) / (q * q);
  const h23 = (b * b - a * a) / (q * q);
  const curvature: number[] = [];
  for (let i = 0; i < 3; i++)
    for (let j = 0; j < 3; j++)
      curvature.push(
        h22 * ((e2[i] as number) * (e2[j] as number) - (e3[i] as number) * (e3[j] as number)) +
          h23 * ((e2[i] as number) * (e3[j] as number) + (e3[i] as number) * (e2[j] as number)),
      );
  return { hinge, e2, e3, c: a / h, s: b / h, gradient: add(scale(e2, -b / q), scale(e3, a / q)), curvature };
}

function armSeat(
  geometry: CornerGeometry,
  spring: SpringGeometry,
  seat: Extract<SpringGeometry["seat"], { on: "arm" }>,
  x: Vector,
  r: Vector,
): SeatLength {
  const first = linkOf(geometry, seat.links[0]);
  const {
    hinge,
    e2,
    e3,
    c,
    s,
    gradient: grad,
    curvature: angle,
  } = computeArmAngle(first, linkOf(geometry, seat.links[1]), x);
  const fixed = subtract(seat.moving, first.inner);
  const along = dot(fixed, hinge);
  const p2 = dot(fixed, e2);
  const p3 = dot(fixed, e3);
  const outward = add(scale(e2, p2 * c - p3 * s), scale(e3, p2 * s + p3 * c));
  const turned = add(scale(e2, -p2 * s - p3 * c), scale(e3, p2 * c - p3 * s));
  const at = add(add(first.inner, scale(hinge, along)), outward);
  const line = subtract(at, spring.body);
  const length = norm(line);
  const slope = dot(line, turned) / length;
  const bend = (dot(turned, turned) - dot(line, outward)) / length - (slope * slope) / length;
  const curvature = angle.map(
    (one, k) => bend * (grad[Math.floor(k / 3)] as number) * (grad[k % 3] as number) + slope * one,
  );
  return { length, x, r, gradient: scale(grad, slope), curvature, seat: at };
}

/** Gradient of a seat length by the step (v, w) of the knuckle. */
export function seatRow(seat: SeatLength): readonly number[] {
  const m = cross(seat.r, seat.gradient);
  return [...seat.gradient, ...m];
}
