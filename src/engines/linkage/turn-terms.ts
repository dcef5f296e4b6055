import { add, cross, dot, norm, rotate, scale, subtract, unitVector, type Vector } from "#numeric";
import type { ElasticCorner, EndRate } from "./elastic-corner.ts";
import {
  armAt,
  centreAt,
  type ElasticTerm,
  makeTermState,
  type TermState,
  writeColumns,
  writePointTerm,
} from "./elastic-term.ts";
import type { CornerGeometry, LinkGeometry } from "./geometry.ts";
import { designTriad } from "./mechanism.ts";
import { type Pose, rotationVector } from "./pose.ts";
import { computeArmAngle } from "./seat.ts";
import { angleOverSine, rotationVectorFactor } from "./turn-factors.ts";

/** What of a joint's rates is left: 1 where it is sound. */
export type Softness = (link: string, end: "inner" | "outer" | null) => number;

/** A direction about which a bush resists turns, and how much, N m per radian. */
interface TurnRate {
  readonly about: Vector;
  readonly rate: number;
}

/**
 * Terms of every bush that resists being turned, nought at design: inner ends against the body, outer ends against the
 * knuckle. A single link turns the shortest way, an arm about the line of its inner points; the spin of a link about its own
 * line is free. The outer joint of an arm is a ball and must have no such rates.
 */
export function buildTurnTerms(corner: ElasticCorner, softness: Softness): ElasticTerm[] {
  const { geometry, elasticity } = corner;
  const terms: ElasticTerm[] = [];
  const push = (name: string, rate: number, factor: number, at: ElasticTerm["at"]): void => {
    terms.push({
      kind: "turn",
      name,
      healthyRate: rate,
      rate: rate * factor,
      carriesPreload: false,
      play: 0,
      at,
    });
  };
  for (const { link: name, end, rate } of elasticity.rubber) {
    const link = geometry.links.find((l) => l.name === name);
    const turns = turnRatesOf(rate, rate.axis);
    if (!link || turns.length === 0) continue;
    const factor = softness(name, end);
    const partner = armPartner(geometry, link);
    if (partner && end === "inner") {
      const { hinge } = computeArmAngle(link, partner, link.outer);
      const about = turns.reduce((sum, t) => sum + t.rate * dot(t.about, hinge) ** 2, 0);
      push(name, about, factor, (pose, _rack, into = makeTermState()) =>
        writePointTerm(
          geometry,
          link.outer,
          pose,
          (x) => {
            const angle = computeArmAngle(link, partner, x);
            return { value: Math.atan2(angle.s, angle.c), gradient: angle.gradient, curvature: angle.curvature };
          },
          into,
        ),
      );
      continue;
    }
    for (const turn of turns)
      push(name, turn.rate, factor, (pose, rack, into = makeTermState()) =>
        writeLinkTurn(geometry, link, turn.about, end === "outer", rack, pose, into),
      );
  }
  const { strut } = geometry;
  if (strut && elasticity.strutTop) {
    const line = subtract(strut.top, strut.axisPoint);
    for (const turn of turnRatesOf({ ...elasticity.strutTop }, line))
      push("strut_top", turn.rate, softness("strut_top", null), (pose, _rack, into = makeTermState()) =>
        writeLineTilt(unitVector(line), turn.about, pose, into),
      );
  }
  if (geometry.trailingArm && elasticity.trailingArm)
    for (const turn of turnRatesOf(elasticity.trailingArm, elasticity.trailingArm.axis))
      push("trailing_arm", turn.rate, softness("trailing_arm", null), (pose, _rack, into = makeTermState()) =>
        writeKnuckleTurn(turn.about, pose, into),
      );
  return terms;
}

/** Whether another link has its outer point, so that both are one arm. */
export function armPartner(geometry: CornerGeometry, link: LinkGeometry): LinkGeometry | undefined {
  return geometry.links.find((l) => l !== link && l.outer.every((c, i) => c === link.outer[i]));
}

/** The directions a bush resists turns about: its axis, and two across it; none without an axis. */
export function turnRatesOf(rate: EndRate, axis: Vector | undefined): readonly TurnRate[] {
  if (!axis || (rate.conical === undefined && rate.torsional === undefined)) return [];
  const [first, second, along] = designTriad({ kind: "given", vector: axis }, []);
  return [
    ...(rate.torsional === undefined ? [] : [{ about: along, rate: rate.torsional }]),
    ...(rate.conical === undefined
      ? []
      : [
          { about: first, rate: rate.conical },
          { about: second, rate: rate.conical },
        ]),
  ];
}

interface SwingMeasure {
  readonly value: number;
  readonly gradient: Vector;
  /** Its second derivatives applied to a vector. */
  readonly bend: (d: Vector) => Vector;
}

/**
 * Part about q of the shortest turn from the unit direction u0 to the unit direction u, by u: f(u0.u) (q x u0).u with f the
 * angle over its sine.
 */
function measureSwing(q: Vector, u0: Vector, u: Vector): SwingMeasure {
  const p = cross(q, u0);
  const [f, f1, f2] = angleOverSine(dot(u0, u));
  const pu = dot(p, u);
  return {
    value: f * pu,
    gradient: add(scale(u0, f1 * pu), scale(p, f)),
    bend: (d) => {
      const along = dot(u0, d);
      return add(scale(u0, f2 * pu * along + f1 * dot(p, d)), scale(p, f1 * along));
    },
  };
}

/** Turn of a link's line about q, seen from the body, or (with `fromKnuckle`) from the knuckle, which then carries q. */
function writeLinkTurn(
  geometry: CornerGeometry,
  link: LinkGeometry,
  q: Vector,
  fromKnuckle: boolean,
  rack: number,
  pose: Pose,
  into: TermState,
): TermState {
  const inner: Vector = link.steered ? add(link.inner, [0, rack, 0]) : link.inner;
  const r = armAt(geometry, pose, link.outer);
  const line = subtract(add(centreAt(geometry, pose), r), inner);
  const length = norm(line);
  const u = scale(line, 1 / length);
  const design = unitVector(subtract(link.outer, link.inner));
  const carry = (a: Vector): Vector => (fromKnuckle ? rotate(pose.r, a) : a);
  const { value, gradient: g, bend } = measureSwing(carry(q), carry(design), u);
  const ug = dot(u, g);
  const force = scale(subtract(g, scale(u, ug)), 1 / length);
  into.value = value;
  into.row.set(force);
  into.row.set(fromKnuckle ? subtract(cross(r, force), cross(u, g)) : cross(r, force), 3);
  writeColumns(into.turning, (v, w) => {
    const dr = cross(w, r);
    const dx = add(v, dr);
    const stretch = dot(u, dx);
    const du = scale(subtract(dx, scale(u, stretch)), 1 / length);
    const dg = fromKnuckle ? add(cross(w, g), bend(subtract(du, cross(w, u)))) : bend(du);
    const across = subtract(subtract(dg, scale(du, ug)), scale(u, dot(du, g) + dot(u, dg)));
    const dForce = scale(subtract(across, scale(force, stretch)), 1 / length);
    const moment = add(cross(dr, force), cross(r, dForce));
    return [dForce, fromKnuckle ? subtract(moment, add(cross(du, g), cross(u, dg))) : moment];
  });
  return into;
}

/** Tilt about q of a line the knuckle carries, against the body. */
function writeLineTilt(line: Vector, q: Vector, pose: Pose, into: TermState): TermState {
  const now = rotate(pose.r, line);
  const { value, gradient: g, bend } = measureSwing(q, line, now);
  into.value = value;
  into.row.fill(0, 0, 3);
  into.row.set(cross(now, g), 3);
  writeColumns(into.turning, (_v, w) => {
    const da = cross(w, now);
    return [[0, 0, 0], add(cross(da, g), cross(now, bend(da)))];
  });
  return into;
}

/** Part about q of the knuckle's rotation vector o: a step w changes it by J w = w - o x w/2 + k o x (o x w), so its row is J'q. */
function writeKnuckleTurn(q: Vector, pose: Pose, into: TermState): TermState {
  const o = rotationVector(pose.r);
  const [k, k1] = rotationVectorFactor(dot(o, o));
  const twice = (a: Vector, b: Vector, c: Vector): Vector => cross(a, cross(b, c));
  into.value = dot(q, o);
  into.row.fill(0, 0, 3);
  into.row.set(add(add(q, scale(cross(o, q), 0.5)), scale(twice(o, o, q), k)), 3);
  writeColumns(into.turning, (_v, w) => {
    const d = add(add(w, scale(cross(o, w), -0.5)), scale(twice(o, o, w), k));
    const bend = add(scale(twice(o, o, q), 2 * k1 * dot(o, d)), scale(add(twice(d, o, q), twice(o, d, q)), k));
    return [[0, 0, 0], add(scale(cross(d, q), 0.5), bend)];
  });
  return into;
}
