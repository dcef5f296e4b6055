import type { WheelPose } from "#casework";
import { type Axle, type Side, seatAtRideHeight } from "#vehicle";
import { between, type CarPoint, onSide } from "../projection.ts";

type Point = readonly [number, number, number];

/** A corner with its wheel in one pose: where its points have gone. Vehicle frame, metres. */
export interface MovedCorner {
  readonly centre: CarPoint;
  /** Unit vector along the spin axis, outboard. */
  readonly spin: Point;
  readonly groundZ: number;
  readonly links: readonly {
    readonly name: string;
    readonly arm: string | null;
    readonly inner: CarPoint;
    readonly outer: CarPoint;
    readonly width: number;
  }[];
  readonly trailingBush: CarPoint | null;
  readonly spring: { readonly seat: CarPoint; readonly top: CarPoint };
  readonly damper: { readonly foot: CarPoint; readonly top: CarPoint };
}

const point = ([x, y, z]: CarPoint): Point => [x, y, z ?? 0];
const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const plus = (a: Point, b: Point): Point => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
const times = (a: Point, k: number): Point => [a[0] * k, a[1] * k, a[2] * k];
const dot = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Point, b: Point): Point => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const unit = (a: Point): Point => times(a, 1 / (Math.hypot(...a) || 1));

function rotated(rotation: readonly number[], v: Point): Point {
  const row = (i: number): Point => [rotation[i] ?? 0, rotation[i + 1] ?? 0, rotation[i + 2] ?? 0];
  return [dot(row(0), v), dot(row(3), v), dot(row(6), v)];
}

/** Axes of the plane through two inner joints and the outer one, for carrying a point along with a rigid arm. */
function armAxes(innerA: Point, innerB: Point, outer: Point): readonly [Point, Point, Point] {
  const along = unit(minus(innerB, innerA));
  const normal = unit(cross(along, minus(outer, innerA)));
  return [along, normal, cross(along, normal)];
}

/**
 * Where the points of a corner lie in a pose.
 * @param axle left side as entered; a right corner is its mirror image
 * @param pose of the asked corner, vehicle frame; its rotation carries the knuckle from its design attitude
 * @param rack shift of the inner ends of steered links along +y, metres
 */
export function moveCorner(axle: Axle, side: Side, pose: WheelPose, rack: number): MovedCorner {
  const design = point(onSide(side, axle.wheel.centre));
  const onKnuckle = (p: CarPoint): Point =>
    plus(pose.centre, rotated(pose.rotation, minus(point(onSide(side, p)), design)));
  const carrier = axle.bodies?.layout.wheel.on;
  /** Of several bodies: with the one it sits on, by its own pose. */
  const onBody = (p: CarPoint, body: string): Point => {
    const moved = pose.bodies?.[body];
    if (body === carrier) return onKnuckle(p);
    const place = point(onSide(side, p));
    return moved === undefined ? place : plus(plus(design, moved.shift), rotated(moved.rotation, minus(place, design)));
  };
  const links = axle.links.map((link) => {
    const [innerOn, outerOn] = link.between ?? [];
    const inner = innerOn === undefined ? point(onSide(side, link.inner.at)) : onBody(link.inner.at, innerOn);
    return {
      name: link.name,
      arm: link.arm ?? null,
      inner: link.steered ? plus(inner, [0, rack, 0]) : inner,
      outer: outerOn === undefined ? onKnuckle(link.outer.at) : onBody(link.outer.at, outerOn),
      width: link.section.width,
    };
  });
  const seatOf = (seat: Axle["spring"]["seat"]): CarPoint => {
    if (seat.on === "knuckle") return onKnuckle(seat.moving.at);
    if (seat.on === "body") return onBody(seat.moving.at, seat.body);
    if (seat.on === "link") {
      const link = links.find(({ name }) => name === seat.link);
      return link === undefined
        ? onSide(side, seatAtRideHeight(axle.links, seat))
        : between(link.inner, link.outer, seat.fraction);
    }
    const [a, b] = seat.links.map((name) => links.find((link) => link.name === name));
    const still = axle.links.find((link) => link.name === seat.links[0]);
    const moving = point(onSide(side, seat.moving.at));
    if (a === undefined || b === undefined || still === undefined) return moving;
    const [ia, ib] = [point(a.inner), point(b.inner)];
    const before = armAxes(ia, ib, point(onSide(side, still.outer.at)));
    const after = armAxes(ia, ib, point(a.outer));
    const offset = minus(moving, ia);
    return before.reduce<Point>((sum, axis, i) => plus(sum, times(after[i] ?? axis, dot(offset, axis))), ia);
  };
  const outboard = side === "left" ? 1 : -1;
  return {
    centre: pose.centre,
    spin: [
      Math.sin(pose.toe) * Math.cos(pose.camber),
      outboard * Math.cos(pose.toe) * Math.cos(pose.camber),
      -Math.sin(pose.camber),
    ],
    groundZ: pose.contact[2],
    links,
    trailingBush: axle.trailingArm === undefined ? null : onSide(side, axle.trailingArm.bush.at),
    spring: { seat: seatOf(axle.spring.seat), top: onSide(side, axle.spring.body.at) },
    damper:
      axle.strut === undefined
        ? { foot: seatOf(axle.damper.seat), top: onSide(side, axle.damper.body.at) }
        : { foot: onKnuckle(axle.strut.axisPoint.at), top: onSide(side, axle.strut.top.at) },
  };
}
