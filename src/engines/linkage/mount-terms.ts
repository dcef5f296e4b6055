import { add, cross, dot, rotate, scale, subtract, unitVector, type Vector } from "#numeric";
import type { ElasticCorner, VoidedRate } from "./elastic-corner.ts";
import {
  armAt,
  centreAt,
  type ElasticTerm,
  makeTermState,
  type TermState,
  writeColumns,
  writePointTerm,
} from "./elastic-term.ts";
import type { CornerGeometry } from "./geometry.ts";
import { designTriad, directionAcross } from "./mechanism.ts";
import type { Pose } from "./pose.ts";

/**
 * The two offsets of a strut's top across its line. One rate in all directions: along directions the knuckle carries; with
 * voids, which stay in the body: along body directions, tilted with the line the shortest way. Equal rates give the same but
 * for the offset that carries the preload, which follows the knuckle in one and stays in the body in the other (micrometres).
 */
export function buildStrutTopTerms(corner: ElasticCorner, factor: number): ElasticTerm[] {
  const { geometry, elasticity } = corner;
  if (!geometry.strut) return [];
  const { top, axisPoint } = geometry.strut;
  const line = subtract(top, axisPoint);
  const rate = elasticity.strutTop;
  const voided = rate?.voided;
  const mount = (healthyRate: number, at: ElasticTerm["at"]): ElasticTerm => ({
    kind: "mount",
    name: "strut_top",
    healthyRate,
    rate: healthyRate * factor,
    carriesPreload: true,
    play: 0,
    at,
  });
  if (!rate || !voided) {
    const triad = designTriad({ kind: "given", vector: line }, []);
    return ([0, 1] as const).map((which) =>
      mount(rate?.radial ?? Number.POSITIVE_INFINITY, (pose, _rack, into = makeTermState()) =>
        writeCarriedOffset(geometry, top, axisPoint, triad[which], pose, into),
      ),
    );
  }
  const axis = unitVector(line);
  const through = directionAcross(axis, voided.through);
  return [
    mount(voided.rate, (pose, _rack, into = makeTermState()) =>
      writeBodyOffset(geometry, top, axisPoint, axis, through, pose, into),
    ),
    mount(rate.radial, (pose, _rack, into = makeTermState()) =>
      writeBodyOffset(geometry, top, axisPoint, axis, cross(axis, through), pose, into),
    ),
  ];
}

/** The three shifts of a trailing arm's bush along directions fixed in the body: two across its axis, one along it. */
export function buildTrailingArmTerms(corner: ElasticCorner, factor: number): ElasticTerm[] {
  const { geometry, elasticity } = corner;
  const arm = geometry.trailingArm;
  if (!arm) return [];
  const rate = elasticity.trailingArm;
  const directions = mountDirections(rate?.axis ?? arm.freeAxis ?? [0, 1, 0], rate?.voided);
  const flat = new Float64Array(9);
  const rates = [rate?.voided?.rate ?? rate?.radial, rate?.radial, rate?.axial ?? rate?.radial];
  return directions.flatMap((direction, which): ElasticTerm[] => {
    const along = which === 2;
    // A bush that is free along its axis and has no rubber there holds nothing along it.
    if (along && arm.freeAxis && !rate) return [];
    const healthyRate = rates[which] ?? Number.POSITIVE_INFINITY;
    return [
      {
        kind: "mount",
        name: "trailing_arm",
        healthyRate,
        rate: healthyRate * factor,
        carriesPreload: !(along && arm.freeAxis),
        play: 0,
        at: (pose, _rack, into = makeTermState()) =>
          writePointTerm(
            geometry,
            arm.bush,
            pose,
            (x) => ({ value: dot(direction, subtract(x, arm.bush)), gradient: direction, curvature: flat }),
            into,
          ),
      },
    ];
  });
}

/** Through the voids (or any direction across), across both, along the axis. */
function mountDirections(axis: Vector, voided: VoidedRate | undefined): readonly Vector[] {
  if (!voided) return designTriad({ kind: "given", vector: axis }, []);
  const a = unitVector(axis);
  const through = directionAcross(a, voided.through);
  return [through, cross(a, through), a];
}

/**
 * Offset of a body point from a line carried by the knuckle, along E = R e: m = E.(top - axis point).
 * Gradient (-E, E x b), b = top - wheel centre; dE = w x E.
 */
function writeCarriedOffset(
  geometry: CornerGeometry,
  top: Vector,
  axisPoint: Vector,
  e: Vector,
  pose: Pose,
  into: TermState,
): TermState {
  const carried = rotate(pose.r, e);
  const b = subtract(top, centreAt(geometry, pose));
  into.value = dot(carried, subtract(b, armAt(geometry, pose, axisPoint)));
  into.row.set(scale(carried, -1));
  into.row.set(cross(carried, b), 3);
  writeColumns(into.turning, (v, w) => {
    const de = cross(w, carried);
    return [scale(de, -1), subtract(cross(de, b), cross(carried, v))];
  });
  return into;
}

/**
 * The same along a body direction e across the design line a, tilted the shortest way from a to the line a' = R a now:
 * E = e - beta s with s = a + a', k = 1 + a.a', beta = (a'.e)/k. As E follows a' alone, a turn of the knuckle about the
 * line leaves it where it is.
 */
function writeBodyOffset(
  geometry: CornerGeometry,
  top: Vector,
  axisPoint: Vector,
  a: Vector,
  e: Vector,
  pose: Pose,
  into: TermState,
): TermState {
  const now = rotate(pose.r, a);
  const k = 1 + dot(a, now);
  const beta = dot(now, e) / k;
  const s = add(a, now);
  const tilted = subtract(e, scale(s, beta));
  const r = armAt(geometry, pose, axisPoint);
  const d = subtract(subtract(top, centreAt(geometry, pose)), r);
  const h = subtract(e, scale(a, beta));
  const nh = cross(now, h);
  const sd = dot(s, d);
  // How m changes with the line alone: dE.d = w.turn.
  const turn = subtract(scale(nh, -sd / k), scale(cross(now, d), beta));
  into.value = dot(tilted, d);
  into.row.set(scale(tilted, -1));
  into.row.set(subtract(turn, cross(r, tilted)), 3);
  writeColumns(into.turning, (v, w) => {
    const dr = cross(w, r);
    const dd = scale(add(v, dr), -1);
    const da = cross(w, now);
    const dk = dot(a, da);
    const dBeta = (dot(da, e) - beta * dk) / k;
    const dTilted = scale(add(scale(s, dBeta), scale(da, beta)), -1);
    const dNh = subtract(cross(da, h), scale(cross(now, a), dBeta));
    const dSdOverK = (dot(da, d) + dot(s, dd) - (sd * dk) / k) / k;
    const dTurn = subtract(
      scale(add(scale(dNh, sd / k), scale(nh, dSdOverK)), -1),
      add(scale(cross(now, d), dBeta), scale(add(cross(da, d), cross(now, dd)), beta)),
    );
    return [scale(dTilted, -1), subtract(dTurn, add(cross(dr, tilted), cross(r, dTilted)))];
  });
  return into;
}
