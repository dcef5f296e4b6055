import {
  addJets,
  addVectors,
  crossVectors,
  divideJets,
  dotVectors,
  type Jet,
  type JetVector,
  lengthOf,
  multiplyJets,
  scaleJet,
  scaleVector,
  subtractJets,
  subtractVectors,
  type Vector,
} from "#numeric";
import type { ElasticCorner, EndRate } from "./elastic-corner.ts";
import type { SpringGeometry } from "./geometry.ts";
import { carryJet, type JetCorner, type JetPose, triadJets, turnVector, unitJets } from "./jet-corner.ts";
import { movingPoint } from "./seat.ts";

/** A measure with derivatives by the parameters: value, gradient row, and change of the row along a fixed step. */
export interface JetTermState {
  readonly value: Jet;
  readonly row: readonly Jet[];
  readonly along: (v: Vector, w: Vector) => readonly Jet[];
}

/** The jet form of one elastic term (same order and meaning as buildElasticTerms). */
export interface JetTerm {
  readonly name: string;
  readonly rate: Jet | null;
  readonly healthyRate: Jet | null;
  readonly carriesPreload: boolean;
  readonly play: number;
  readonly at: (pose: JetPose, rack: number) => JetTermState;
}

/** Elastic terms of a corner as jets; `null` rates are rigid. */
export function buildJetTerms(jets: JetCorner, corner: ElasticCorner): JetTerm[] {
  const { geometry, elasticity, faults } = corner;
  const terms: JetTerm[] = [];
  const softness = (link: string, end: "inner" | "outer" | null): number =>
    faults.reduce(
      (p, f) => (f.kind === "soft" && f.link === link && (end === null || f.end === end) ? p * f.factor : p),
      1,
    );
  for (const link of geometry.links) {
    const inner = jets.pointAt(link.inner);
    const outer = jets.pointAt(link.outer);
    const u = unitJets(subtractVectors(outer, inner));
    const ends = elasticity.rubber.filter((r) => r.link === link.name);
    const member = elasticity.members.find((m) => m.link === link.name)?.rate ?? null;
    const series = (faulty: boolean): Jet | null => {
      let flexibility: Jet | null = member === null ? null : jets.number(1 / member);
      for (const end of ends) {
        const f = endFlexibility(
          jets,
          u,
          end.rate,
          jets.rateFactor(`${link.name}.${end.end}`),
          faulty ? softness(link.name, end.end) : 1,
        );
        flexibility = flexibility ? addJets(flexibility, f) : f;
      }
      return flexibility ? divideJets(jets.number(1), flexibility) : null;
    };
    const play = faults.reduce((sum, f) => (f.kind === "play" && f.link === link.name ? sum + f.total : sum), 0);
    terms.push({
      name: link.name,
      rate: series(true),
      healthyRate: series(false),
      carriesPreload: true,
      play,
      at: (pose, rack) =>
        distanceTerm(jets, pose, outer, link.steered ? addVectors(inner, jets.constant([0, rack, 0])) : inner, 1),
    });
  }
  if (geometry.strut) {
    const top = jets.pointAt(geometry.strut.top);
    const axisPoint = jets.pointAt(geometry.strut.axisPoint);
    const triad = triadJets(jets, subtractVectors(top, axisPoint));
    const rate = elasticity.strutTop;
    const healthy = rate === undefined ? null : scaleJet(jets.rateFactor("strut_top"), rate);
    for (const which of [0, 1] as const)
      terms.push({
        name: "strut_top",
        healthyRate: healthy,
        rate: healthy && scaleJet(healthy, softness("strut_top", null)),
        carriesPreload: true,
        play: 0,
        at: (pose) => carriedOffset(jets, pose, top, axisPoint, triad[which]),
      });
  }
  if (geometry.trailingArm) terms.push(...trailingArmTerms(jets, corner, softness("trailing_arm", null)));
  const spring = geometry.spring;
  if (spring) {
    const rate = jets.number(elasticity.springRate);
    terms.push({
      name: "spring",
      rate,
      healthyRate: rate,
      carriesPreload: true,
      play: 0,
      at: (pose) => springTerm(jets, pose, spring),
    });
  }
  return terms;
}

/** Flexibility of one end along the link: (u.a)^2/axial + (1 - (u.a)^2)/radial, divided by rate factor and fault factor. */
function endFlexibility(jets: JetCorner, u: JetVector, rate: EndRate, factor: Jet, fault: number): Jet {
  const scaled = scaleJet(factor, fault);
  if (!rate.axis || rate.axial === undefined) return divideJets(jets.number(1 / rate.radial), scaled);
  const c = dotVectors(u, unitJets(jets.constant(rate.axis)));
  const c2 = multiplyJets(c, c);
  const sum = addJets(scaleJet(c2, 1 / rate.axial), scaleJet(subtractJets(jets.number(1), c2), 1 / rate.radial));
  return divideJets(sum, scaled);
}

function trailingArmTerms(jets: JetCorner, corner: ElasticCorner, factor: number): JetTerm[] {
  const arm = corner.geometry.trailingArm;
  if (!arm) return [];
  const rate = corner.elasticity.trailingArm;
  const bush = jets.pointAt(arm.bush);
  const triad = triadJets(jets, jets.constant(rate?.axis ?? arm.freeAxis ?? [0, 1, 0]));
  const terms: JetTerm[] = [];
  for (const which of [0, 1, 2] as const) {
    if (which === 2 && arm.freeAxis && !rate) continue;
    const value = which === 2 ? (rate?.axial ?? rate?.radial) : rate?.radial;
    const healthy = value === undefined ? null : scaleJet(jets.rateFactor("trailing_arm"), value);
    const e = triad[which];
    terms.push({
      name: "trailing_arm",
      healthyRate: healthy,
      rate: healthy && scaleJet(healthy, factor),
      carriesPreload: !(which === 2 && arm.freeAxis),
      play: 0,
      at: (pose) => {
        const { x, r } = carryJet(jets, pose, bush);
        const zero = jets.constant([0, 0, 0]);
        return pointState(jets, r, dotVectors(e, subtractVectors(x, bush)), e, () => zero);
      },
    });
  }
  return terms;
}

/** Value, row (g, r x g) and its change along a step for a measure of one knuckle point; `bend` gives S dx. */
function pointState(
  jets: JetCorner,
  r: JetVector,
  value: Jet,
  g: JetVector,
  bend: (dx: JetVector) => JetVector,
): JetTermState {
  return {
    value,
    row: [...g, ...crossVectors(r, g)],
    along: (v, w) => {
      const dr = crossVectors(jets.constant(w), r);
      const dg = bend(addVectors(jets.constant(v), dr));
      return [...dg, ...addVectors(crossVectors(dr, g), crossVectors(r, dg))];
    },
  };
}

/** factor times the distance of a knuckle point from a fixed one. */
function distanceTerm(
  jets: JetCorner,
  pose: JetPose,
  point: JetVector,
  fixed: JetVector,
  factor: number,
): JetTermState {
  const { x, r } = carryJet(jets, pose, point);
  const d = subtractVectors(x, fixed);
  const length = lengthOf(d);
  const u: JetVector = [divideJets(d[0], length), divideJets(d[1], length), divideJets(d[2], length)];
  const stretch = divideJets(jets.number(factor), length);
  return pointState(jets, r, scaleJet(length, factor), scaleVector(u, jets.number(factor)), (dx) =>
    scaleVector(subtractVectors(dx, scaleVector(u, dotVectors(u, dx))), stretch),
  );
}

function carriedOffset(
  jets: JetCorner,
  pose: JetPose,
  top: JetVector,
  axisPoint: JetVector,
  e: JetVector,
): JetTermState {
  const carried = turnVector(pose, e);
  const b = subtractVectors(top, pose.centre);
  const { r } = carryJet(jets, pose, axisPoint);
  const minus = jets.number(-1);
  return {
    value: dotVectors(carried, subtractVectors(b, r)),
    row: [...scaleVector(carried, minus), ...crossVectors(carried, b)],
    along: (v, w) => {
      const de = crossVectors(jets.constant(w), carried);
      return [
        ...scaleVector(de, minus),
        ...subtractVectors(crossVectors(de, b), crossVectors(carried, jets.constant(v))),
      ];
    },
  };
}

/** Spring length: seats on a link are f times the distance of its outer joint from ((f - 1) inner + top)/f. */
function springTerm(jets: JetCorner, pose: JetPose, spring: SpringGeometry): JetTermState {
  const { geometry } = jets.linkage;
  const { seat } = spring;
  const top = jets.constant(spring.body);
  const moving = jets.pointAt(movingPoint(geometry, spring));
  if (seat.on === "knuckle") return distanceTerm(jets, pose, jets.constant(seat.moving), top, 1);
  if (seat.on === "link") {
    const link = geometry.links.find((l) => l.name === seat.link);
    const inner = jets.pointAt(link?.inner ?? spring.body);
    const f = seat.fraction;
    const fixed = scaleVector(addVectors(top, scaleVector(inner, jets.number(f - 1))), jets.number(1 / f));
    return distanceTerm(jets, pose, moving, fixed, f);
  }
  return armTerm(jets, pose, spring, seat, moving);
}

/** Seat on a rigid arm: its length depends on the angle of the outer joint about the line of the inner points alone. */
function armTerm(
  jets: JetCorner,
  pose: JetPose,
  spring: SpringGeometry,
  seat: Extract<SpringGeometry["seat"], { on: "arm" }>,
  outer: JetVector,
): JetTermState {
  const links = seat.links.map((name) => jets.linkage.geometry.links.find((l) => l.name === name));
  const a0 = jets.pointAt(links[0]?.inner ?? spring.body);
  const b0 = jets.pointAt(links[1]?.inner ?? spring.body);
  const hinge = unitJets(subtractVectors(b0, a0));
  const arm = subtractVectors(outer, a0);
  const e2 = unitJets(subtractVectors(arm, scaleVector(hinge, dotVectors(arm, hinge))));
  const e3 = crossVectors(hinge, e2);
  const fixed = subtractVectors(jets.constant(seat.moving), a0);
  const [p1, p2, p3] = [dotVectors(fixed, hinge), dotVectors(fixed, e2), dotVectors(fixed, e3)];
  const { x, r } = carryJet(jets, pose, outer);
  const d = subtractVectors(x, a0);
  const a = dotVectors(d, e2);
  const b = dotVectors(d, e3);
  const q = addJets(multiplyJets(a, a), multiplyJets(b, b));
  const h = lengthOf([a, b, jets.number(0)]);
  const c = divideJets(a, h);
  const s = divideJets(b, h);
  const o2 = subtractJets(multiplyJets(p2, c), multiplyJets(p3, s));
  const o3 = addJets(multiplyJets(p2, s), multiplyJets(p3, c));
  const outward = addVectors(scaleVector(e2, o2), scaleVector(e3, o3));
  const turned = addVectors(scaleVector(e2, scaleJet(o3, -1)), scaleVector(e3, o2));
  const line = subtractVectors(addVectors(addVectors(a0, scaleVector(hinge, p1)), outward), jets.constant(spring.body));
  const length = lengthOf(line);
  const slope = divideJets(dotVectors(line, turned), length);
  const grad = addVectors(scaleVector(e2, scaleJet(divideJets(b, q), -1)), scaleVector(e3, divideJets(a, q)));
  const bendOf = divideJets(
    subtractJets(subtractJets(dotVectors(turned, turned), dotVectors(line, outward)), multiplyJets(slope, slope)),
    length,
  );
  const q2 = multiplyJets(q, q);
  const h22 = divideJets(scaleJet(multiplyJets(a, b), 2), q2);
  const h23 = divideJets(subtractJets(multiplyJets(b, b), multiplyJets(a, a)), q2);
  const bend = (dx: JetVector): JetVector => {
    const d2 = dotVectors(e2, dx);
    const d3 = dotVectors(e3, dx);
    const angle2 = multiplyJets(slope, addJets(multiplyJets(h22, d2), multiplyJets(h23, d3)));
    const angle3 = multiplyJets(slope, subtractJets(multiplyJets(h23, d2), multiplyJets(h22, d3)));
    const turn = scaleVector(grad, multiplyJets(bendOf, dotVectors(grad, dx)));
    return addVectors(turn, addVectors(scaleVector(e2, angle2), scaleVector(e3, angle3)));
  };
  return pointState(jets, r, length, scaleVector(grad, slope), bend);
}
