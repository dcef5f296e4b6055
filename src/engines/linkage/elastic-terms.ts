import { add, cross, dot, norm, rotate, scale, subtract, unitVector, type Vector } from "#numeric";
import type { ElasticCorner, ElasticFault, EndRate } from "./elastic-corner.ts";
import type { CornerGeometry } from "./geometry.ts";
import { designTriad } from "./mechanism.ts";
import type { Pose } from "./pose.ts";
import { computeSeatLength } from "./seat.ts";

/**
 * One elastic member as a scalar measure m of the pose with energy k/2 (m - free)^2 and force f = k (m - free)
 * (tension positive). `rate` Infinity is a rigid member: its force is an unknown of the balance.
 */
export interface ElasticTerm {
  /** Link name, "strut_top", "trailing_arm" or "spring". */
  readonly name: string;
  readonly rate: number;
  /** Rate of the healthy member: free lengths belong to it. */
  readonly healthyRate: number;
  /** Takes part in carrying the wheel load at design. */
  readonly carriesPreload: boolean;
  /** Width of the dead band about the free length, metres; 0 without play. */
  readonly play: number;
  /** Value, gradient and change of the gradient at a pose and a rack position (metres). */
  readonly at: (pose: Pose, rack: number) => TermState;
}

/** Value of a measure, its gradient by a step (v, w), and D: how the gradient itself changes with the step (6 x 6). */
export interface TermState {
  readonly value: number;
  readonly row: readonly number[];
  readonly turning: readonly number[];
}

/**
 * Rate of a link along its line from its two ends and its member, in series at design:
 *   1/k = sum over ends [ (u.a)^2/axial + (1 - (u.a)^2)/radial ] + 1/member.
 * Infinity where nothing in it is elastic.
 */
export function computeLinkRate(u: Vector, ends: readonly EndRate[], member: number | null): number {
  let flexibility = member === null ? 0 : 1 / member;
  for (const end of ends) {
    if (!end.axis || end.axial === undefined) {
      flexibility += 1 / end.radial;
      continue;
    }
    const c = dot(u, unitVector(end.axis)) ** 2;
    flexibility += c / end.axial + (1 - c) / end.radial;
  }
  return flexibility === 0 ? Number.POSITIVE_INFINITY : 1 / flexibility;
}

/** How much longer the free length of a member is than the healthy one, metres. */
export const shiftOf = (faults: readonly ElasticFault[], name: string): number =>
  faults.reduce((sum, f) => (f.kind === "shift" && f.link === name ? sum + f.by : sum), 0);

/** All elastic terms of a corner with its faults, the spring last. The corner must have been checked. */
export function buildElasticTerms(corner: ElasticCorner): ElasticTerm[] {
  const { geometry, elasticity, faults } = corner;
  const terms: ElasticTerm[] = [];
  const softened = (link: string, end: "inner" | "outer", rate: EndRate): EndRate => {
    let factor = 1;
    for (const f of faults) if (f.kind === "soft" && f.link === link && f.end === end) factor *= f.factor;
    return factor === 1 ? rate : scaleRate(rate, factor);
  };
  for (const link of geometry.links) {
    const u = unitVector(subtract(link.outer, link.inner));
    const ends = elasticity.rubber.filter((r) => r.link === link.name);
    const member = elasticity.members.find((m) => m.link === link.name)?.rate ?? null;
    const play = faults.reduce((sum, f) => (f.kind === "play" && f.link === link.name ? sum + f.total : sum), 0);
    terms.push({
      name: link.name,
      healthyRate: computeLinkRate(
        u,
        ends.map((e) => e.rate),
        member,
      ),
      rate: computeLinkRate(
        u,
        ends.map((e) => softened(link.name, e.end, e.rate)),
        member,
      ),
      carriesPreload: true,
      play,
      at: (pose, rack) =>
        pointTerm(geometry, link.outer, pose, (x) =>
          distanceFrom(x, link.steered ? add(link.inner, [0, rack, 0]) : link.inner),
        ),
    });
  }
  const mountFactor = (name: string): number =>
    faults.reduce((product, f) => (f.kind === "soft" && f.link === name ? product * f.factor : product), 1);
  if (geometry.strut) {
    const { top, axisPoint } = geometry.strut;
    const triad = designTriad({ kind: "given", vector: subtract(top, axisPoint) }, []);
    const healthyRate = elasticity.strutTop ?? Number.POSITIVE_INFINITY;
    for (const which of [0, 1] as const)
      terms.push({
        name: "strut_top",
        healthyRate,
        rate: healthyRate * mountFactor("strut_top"),
        carriesPreload: true,
        play: 0,
        at: (pose) => carriedOffsetTerm(geometry, top, axisPoint, triad[which], pose),
      });
  }
  if (geometry.trailingArm) terms.push(...trailingArmTerms(corner, mountFactor("trailing_arm")));
  const spring = geometry.spring;
  if (spring)
    terms.push({
      name: "spring",
      healthyRate: elasticity.springRate,
      rate: elasticity.springRate,
      carriesPreload: true,
      play: 0,
      at: (pose) => {
        const seat = computeSeatLength(geometry, spring, pose);
        return {
          value: seat.length,
          row: [...seat.gradient, ...cross(seat.r, seat.gradient)],
          turning: pointTurning(seat.r, seat.gradient, seat.curvature),
        };
      },
    });
  return terms;
}

function trailingArmTerms(corner: ElasticCorner, factor: number): ElasticTerm[] {
  const { geometry, elasticity } = corner;
  const arm = geometry.trailingArm;
  if (!arm) return [];
  const rate = elasticity.trailingArm;
  const axis: Vector = rate?.axis ?? arm.freeAxis ?? [0, 1, 0];
  const triad = designTriad({ kind: "given", vector: axis }, []);
  const flat = [0, 0, 0, 0, 0, 0, 0, 0, 0];
  const terms: ElasticTerm[] = [];
  for (const which of [0, 1, 2] as const) {
    const along = which === 2;
    const healthyRate = (along ? (rate?.axial ?? rate?.radial) : rate?.radial) ?? Number.POSITIVE_INFINITY;
    // A bush that is free along its axis and has no rubber there holds nothing along it.
    if (along && arm.freeAxis && !rate) continue;
    const direction = triad[which];
    terms.push({
      name: "trailing_arm",
      healthyRate,
      rate: healthyRate * factor,
      carriesPreload: !(along && arm.freeAxis),
      play: 0,
      at: (pose) =>
        pointTerm(geometry, arm.bush, pose, (x) => ({
          value: dot(direction, subtract(x, arm.bush)),
          gradient: direction,
          curvature: flat,
        })),
    });
  }
  return terms;
}

/** Rates of one end all times a factor. */
export function scaleRate(rate: EndRate, factor: number): EndRate {
  return {
    radial: rate.radial * factor,
    ...(rate.axial !== undefined ? { axial: rate.axial * factor } : {}),
    ...(rate.axis ? { axis: rate.axis } : {}),
  };
}

interface PointMeasure {
  readonly value: number;
  readonly gradient: Vector;
  readonly curvature: readonly number[];
}

function distanceFrom(x: Vector, fixed: Vector): PointMeasure {
  const d = subtract(x, fixed);
  const value = norm(d);
  const u = scale(d, 1 / value);
  const curvature: number[] = [];
  for (let i = 0; i < 3; i++)
    for (let j = 0; j < 3; j++) curvature.push(((i === j ? 1 : 0) - (u[i] as number) * (u[j] as number)) / value);
  return { value, gradient: u, curvature };
}

/** A measure of where one knuckle point stands. */
function pointTerm(
  geometry: CornerGeometry,
  point: Vector,
  pose: Pose,
  measure: (x: Vector) => PointMeasure,
): TermState {
  const { centre } = geometry.wheel;
  const r = rotate(pose.r, subtract(point, centre));
  const x = add(add(centre, [pose.t[0] as number, pose.t[1] as number, pose.t[2] as number]), r);
  const m = measure(x);
  return {
    value: m.value,
    row: [...m.gradient, ...cross(r, m.gradient)],
    turning: pointTurning(r, m.gradient, m.curvature),
  };
}

/** Change of (g, r x g) with a step: dg = S (v + w x r), d(r x g) = (w x r) x g + r x dg. */
function pointTurning(r: Vector, g: Vector, curvature: readonly number[]): number[] {
  const out = new Array<number>(36).fill(0);
  for (let j = 0; j < 6; j++) {
    const dx: Vector = j < 3 ? [j === 0 ? 1 : 0, j === 1 ? 1 : 0, j === 2 ? 1 : 0] : cross(axisUnit(j - 3), r);
    const dg = rotate(curvature, dx);
    const moment = j < 3 ? cross(r, dg) : add(cross(dx, g), cross(r, dg));
    for (let i = 0; i < 3; i++) {
      out[6 * i + j] = dg[i] as number;
      out[6 * (i + 3) + j] = moment[i] as number;
    }
  }
  return out;
}

function axisUnit(i: number): Vector {
  return [i === 0 ? 1 : 0, i === 1 ? 1 : 0, i === 2 ? 1 : 0];
}

/**
 * Offset of a body point from a line carried by the knuckle, along E = R e: m = E.(top - axis point).
 * Gradient (-E, E x b), b = top - wheel centre; dE = w x E.
 */
function carriedOffsetTerm(geometry: CornerGeometry, top: Vector, axisPoint: Vector, e: Vector, pose: Pose): TermState {
  const { centre } = geometry.wheel;
  const now = add(centre, [pose.t[0] as number, pose.t[1] as number, pose.t[2] as number]);
  const carried = rotate(pose.r, e);
  const b = subtract(top, now);
  const r = rotate(pose.r, subtract(axisPoint, centre));
  const turning = new Array<number>(36).fill(0);
  for (let j = 0; j < 6; j++) {
    const unit = axisUnit(j % 3);
    const de: Vector = j < 3 ? [0, 0, 0] : cross(unit, carried);
    const force = scale(de, -1);
    const moment = j < 3 ? scale(cross(carried, unit), -1) : cross(de, b);
    for (let i = 0; i < 3; i++) {
      turning[6 * i + j] = force[i] as number;
      turning[6 * (i + 3) + j] = moment[i] as number;
    }
  }
  return { value: dot(carried, subtract(b, r)), row: [...scale(carried, -1), ...cross(carried, b)], turning };
}
