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
} from "#numeric";
import { DistanceDerivatives } from "./distance-derivatives.ts";
import type { ElasticCorner, EndRate } from "./elastic-corner.ts";
import { softnessOf } from "./elastic-terms.ts";
import type { LinkGeometry, SpringGeometry } from "./geometry.ts";
import { carryJet, type JetCorner, type JetPose, unitJets } from "./jet-corner.ts";
import { acrossJets, buildJetMountTerms } from "./jet-mount-terms.ts";
import { distanceState, type JetTerm, type JetTermState, localJets, makeStepPose, pointState } from "./jet-term.ts";
import { buildJetTurnTerms } from "./jet-turn-terms.ts";
import { movingPoint } from "./seat.ts";

/** Elastic terms of a corner as jets; `null` rates are rigid. */
export function buildJetTerms(all: JetCorner, corner: ElasticCorner): JetTerm[] {
  const softness = softnessOf(corner.faults);
  const terms = corner.geometry.links.map((link) => linkTerm(all, corner, link));
  terms.push(...buildJetMountTerms(all, corner, softness), ...buildJetTurnTerms(all, corner, softness));
  const { spring } = corner.geometry;
  if (spring) terms.push(springTerm(all, corner, spring));
  return terms;
}

function linkTerm(all: JetCorner, { elasticity, faults }: ElasticCorner, link: LinkGeometry): JetTerm {
  const softness = softnessOf(faults);
  const ends = elasticity.rubber.filter((r) => r.link === link.name);
  const { jets, own } = localJets(
    all,
    [link.inner, link.outer],
    ends.map((e) => `${link.name}.${e.end}`),
  );
  const inner = jets.pointAt(link.inner);
  const outer = jets.pointAt(link.outer);
  const [atInner, atOuter] = [slotOf(inner), slotOf(outer)];
  const distance = new DistanceDerivatives(all.linkage.geometry.wheel.centre, link.outer);
  const u = unitJets(subtractVectors(outer, inner));
  const member = elasticity.members.find((m) => m.link === link.name)?.rate ?? null;
  const series = (faulty: boolean): Jet | null => {
    let flexibility: Jet | null = member === null ? null : jets.number(1 / member);
    for (const end of ends) {
      const factor = jets.rateFactor(`${link.name}.${end.end}`);
      const f = endFlexibility(jets, u, end.rate, factor, faulty ? softness(link.name, end.end) : 1);
      flexibility = flexibility ? addJets(flexibility, f) : f;
    }
    return flexibility ? divideJets(jets.number(1), flexibility) : null;
  };
  return {
    kind: "link",
    name: link.name,
    jets,
    own,
    rate: series(true),
    healthyRate: series(false),
    carriesPreload: true,
    play: faults.reduce((sum, f) => (f.kind === "play" && f.link === link.name ? sum + f.total : sum), 0),
    at: (pose, rack) =>
      distanceState(
        jets,
        makeStepPose(jets, pose),
        outer,
        link.steered ? addVectors(inner, jets.constant([0, rack, 0])) : inner,
        1,
      ),
    deriveOwn: (pose, state, into) => {
      distance.byInner(pose, state, into, atInner, 1);
      distance.byOuter(pose, state, into, atOuter);
    },
  };
}

/** Which parameter the first coordinate of a point of the mechanism is; all three stand together. */
const slotOf = ([x]: JetVector): number => x.indexOf(1, 1) - 1;

/** Flexibility of one end along the link's direction, its rates times a common factor. */
export function endFlexibility(
  jets: Pick<JetCorner, "number" | "constant">,
  u: JetVector,
  rate: EndRate,
  factor: Jet,
  soft: number,
): Jet {
  const scaled = scaleJet(factor, soft);
  if (!rate.axis || rate.axial === undefined) return divideJets(jets.number(1 / rate.radial), scaled);
  const axis = unitJets(jets.constant(rate.axis));
  const square = (e: JetVector): Jet => {
    const c = dotVectors(u, e);
    return multiplyJets(c, c);
  };
  const c2 = square(axis);
  let across = subtractJets(jets.number(1), c2);
  let sum = scaleJet(c2, 1 / rate.axial);
  if (rate.voided) {
    const e2 = square(acrossJets(axis, jets.constant(rate.voided.through)));
    across = subtractJets(across, e2);
    sum = addJets(sum, scaleJet(e2, 1 / rate.voided.rate));
  }
  return divideJets(addJets(sum, scaleJet(across, 1 / rate.radial)), scaled);
}

/** Spring length: seats on a link are f times the distance of its outer joint from ((f - 1) inner + top)/f. */
function springTerm(all: JetCorner, { geometry, elasticity }: ElasticCorner, spring: SpringGeometry): JetTerm {
  const { seat } = spring;
  const names = seat.on === "knuckle" ? [] : seat.on === "link" ? [seat.link] : seat.links;
  const links = names.flatMap((name) => geometry.links.find((l) => l.name === name) ?? []);
  const { jets, own } = localJets(
    all,
    links.flatMap((l) => [l.inner, l.outer]),
    [],
  );
  const rate = jets.number(elasticity.springRate);
  return {
    kind: "spring",
    name: "spring",
    jets,
    own,
    rate,
    healthyRate: rate,
    carriesPreload: true,
    play: 0,
    at: (pose) => springState(jets, makeStepPose(jets, pose), spring),
    ...(seat.on === "link" && links[0] ? { deriveOwn: seatDerivatives(all, jets, links[0], seat.fraction) } : {}),
  };
}

/** A seat on a link is f times the distance of its outer joint from a point that follows (f - 1)/f of the inner one. */
function seatDerivatives(
  all: JetCorner,
  jets: JetCorner,
  link: LinkGeometry,
  fraction: number,
): NonNullable<JetTerm["deriveOwn"]> {
  const distance = new DistanceDerivatives(all.linkage.geometry.wheel.centre, link.outer);
  const [atInner, atOuter] = [slotOf(jets.pointAt(link.inner)), slotOf(jets.pointAt(link.outer))];
  return (pose, state, into) => {
    distance.byInner(pose, state, into, atInner, (fraction - 1) / fraction);
    distance.byOuter(pose, state, into, atOuter);
  };
}

function springState(jets: JetCorner, pose: JetPose, spring: SpringGeometry): JetTermState {
  const { geometry } = jets.linkage;
  const { seat } = spring;
  const top = jets.constant(spring.body);
  const moving = jets.pointAt(movingPoint(geometry, spring));
  if (seat.on === "knuckle") return distanceState(jets, pose, jets.constant(seat.moving), top, 1);
  if (seat.on === "link") {
    const link = geometry.links.find((l) => l.name === seat.link);
    const inner = jets.pointAt(link?.inner ?? spring.body);
    const f = seat.fraction;
    const fixed = scaleVector(addVectors(top, scaleVector(inner, jets.number(f - 1))), jets.number(1 / f));
    return distanceState(jets, pose, moving, fixed, f);
  }
  return armState(jets, pose, spring, seat, moving);
}

/** Seat on a rigid arm: its length depends on the angle of the outer joint about the line of the inner points alone. */
function armState(
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
