import { add, cross, dot, norm, rotate, scale, subtract, unitVector, type Vector } from "#numeric";
import type { CornerGeometry, LinkGeometry } from "./geometry.ts";
import { type Pose, rotationVector } from "./pose.ts";

/** One end of a link, or a mount. */
export interface JointPlace {
  readonly link: string;
  readonly end: "inner" | "outer";
}

/** How far a joint has turned from design, radians. */
export interface JointAngle extends JointPlace {
  /** Whole turn between the two parts it joins, 0 or more; the spin of a link about its own line is not told. */
  readonly swing: number;
  /** Turn about the axis of its bush (right-handed about the axis given), and the rest across it; null without an axis. */
  readonly twist: number | null;
  readonly tilt: number | null;
}

/** Axis of the bush at an end, in the vehicle at design (any length); null for a ball. */
export type BushAxis = (place: JointPlace) => Vector | null;

/** Names under which the mounts that are no links stand among the joints. */
export const MOUNTS = { strutTop: "strut_top", trailingArm: "trailing_arm" } as const;

/**
 * Angles of every joint of a corner at a solved pose against design: inner ends against the body, outer ends against the
 * knuckle. Links that share their outer point are one rigid arm, which turns about the line of its inner points; a single
 * link turns the shortest way from its old line to its new one.
 */
export function computeJointAngles(
  geometry: CornerGeometry,
  pose: Pose,
  rack: number,
  axisOf: BushAxis,
): readonly JointAngle[] {
  const knuckle = rotationVector(pose.r);
  const back = transpose(pose.r);
  const out: JointAngle[] = geometry.links.flatMap((link) => {
    const partner = geometry.links.find((l) => l !== link && samePoint(l.outer, link.outer));
    const turn = partner ? turnOfArm(geometry, link, partner, pose) : turnOfLink(geometry, link, pose, rack);
    // Against the knuckle: first back by its own turn, then on by that of the link or arm.
    const outer = partner
      ? rotationVector(multiply(back, matrixOf(turn)))
      : shortestTurn(designLine(link), rotate(back, lineNow(geometry, link, pose, rack)));
    return [
      angleOf({ link: link.name, end: "inner" }, turn, axisOf),
      angleOf({ link: link.name, end: "outer" }, outer, axisOf),
    ];
  });
  if (geometry.strut) {
    const { top, axisPoint } = geometry.strut;
    const line = unitVector(subtract(top, axisPoint));
    const tilt = shortestTurn(line, rotate(pose.r, line));
    out.push(angleOf({ link: MOUNTS.strutTop, end: "inner" }, tilt, axisOf));
  }
  if (geometry.trailingArm) out.push(angleOf({ link: MOUNTS.trailingArm, end: "inner" }, knuckle, axisOf));
  return out;
}

/** A drive shaft at design: both joint centres and the axis the inner joint turns about. */
export interface DriveShaft {
  readonly inner: Vector;
  readonly outer: Vector;
  /** Axis of the differential's output, any length; the car's y where nothing is known. */
  readonly innerAxis: Vector;
}

/** Angles at both joints of the shaft, radians, and how much longer it stands than at design, metres. */
export interface DriveShaftState {
  readonly innerAngle: number;
  readonly outerAngle: number;
  readonly plunge: number;
}

/** Angles and plunge of a drive shaft; the outer joint turns about the wheel's spin axis and is carried by the knuckle. */
export function computeDriveShaft(
  geometry: CornerGeometry,
  shaft: DriveShaft,
  pose: Pose,
  spinAxis: Vector,
): DriveShaftState {
  const line = subtract(carried(geometry, shaft.outer, pose), shaft.inner);
  const design = subtract(shaft.outer, shaft.inner);
  return {
    innerAngle: angleOfLines(line, shaft.innerAxis),
    outerAngle: angleOfLines(line, spinAxis),
    plunge: norm(line) - norm(design),
  };
}

const samePoint = (a: Vector, b: Vector): boolean => a[0] === b[0] && a[1] === b[1] && a[2] === b[2];
const designLine = (link: LinkGeometry): Vector => subtract(link.outer, link.inner);

function carried({ wheel }: CornerGeometry, p: Vector, pose: Pose): Vector {
  const shift: Vector = [pose.t[0] as number, pose.t[1] as number, pose.t[2] as number];
  return add(add(wheel.centre, shift), rotate(pose.r, subtract(p, wheel.centre)));
}

function lineNow(geometry: CornerGeometry, link: LinkGeometry, pose: Pose, rack: number): Vector {
  const inner: Vector = link.steered ? add(link.inner, [0, rack, 0]) : link.inner;
  return subtract(carried(geometry, link.outer, pose), inner);
}

/** Acute angle between two lines, 0 to a right angle. */
function angleOfLines(a: Vector, b: Vector): number {
  return Math.atan2(norm(cross(a, b)), Math.abs(dot(a, b)));
}

/** Rotation vector of the shortest turn that takes one direction to another. */
function shortestTurn(from: Vector, to: Vector): Vector {
  const across = cross(from, to);
  const sine = norm(across);
  return sine === 0 ? [0, 0, 0] : scale(across, Math.atan2(sine, dot(from, to)) / sine);
}

function turnOfLink(geometry: CornerGeometry, link: LinkGeometry, pose: Pose, rack: number): Vector {
  return shortestTurn(designLine(link), lineNow(geometry, link, pose, rack));
}

/** Rotation vector of a rigid arm about the line of its inner points, by where its outer joint stands. */
function turnOfArm(geometry: CornerGeometry, link: LinkGeometry, partner: LinkGeometry, pose: Pose): Vector {
  const hinge = unitVector(subtract(partner.inner, link.inner));
  const across = (v: Vector): Vector => subtract(v, scale(hinge, dot(v, hinge)));
  const before = across(designLine(link));
  const now = across(subtract(carried(geometry, link.outer, pose), link.inner));
  return scale(hinge, Math.atan2(dot(cross(before, now), hinge), dot(before, now)));
}

function angleOf(place: JointPlace, turn: Vector, axisOf: BushAxis): JointAngle {
  const axis = axisOf(place);
  if (!axis) return { ...place, swing: norm(turn), twist: null, tilt: null };
  const a = unitVector(axis);
  const twist = dot(turn, a);
  return { ...place, swing: norm(turn), twist, tilt: norm(subtract(turn, scale(a, twist))) };
}

/** Row-major rotation of a rotation vector (Rodrigues). */
function matrixOf(turn: Vector): readonly number[] {
  const angle = norm(turn);
  const columns = (
    [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ] as const
  ).map((e): Vector => {
    if (angle === 0) return e;
    const k = scale(turn, 1 / angle);
    return add(
      add(scale(e, Math.cos(angle)), scale(cross(k, e), Math.sin(angle))),
      scale(k, dot(k, e) * (1 - Math.cos(angle))),
    );
  });
  return [0, 1, 2].flatMap((i) => columns.map((c) => c[i] as number));
}

function transpose(r: ArrayLike<number>): readonly number[] {
  return [0, 3, 6, 1, 4, 7, 2, 5, 8].map((i) => r[i] as number);
}

function multiply(a: readonly number[], b: readonly number[]): readonly number[] {
  return [0, 1, 2].flatMap((i) =>
    [0, 1, 2].map((j) => [0, 1, 2].reduce((s, k) => s + (a[3 * i + k] as number) * (b[3 * k + j] as number), 0)),
  );
}
