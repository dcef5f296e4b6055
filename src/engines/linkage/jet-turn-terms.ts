import {
  addJets,
  addVectors,
  atan2Jets,
  composeJet,
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
import type { ElasticCorner } from "./elastic-corner.ts";
import type { LinkGeometry } from "./geometry.ts";
import { carryJet, type JetCorner, type JetPose, triadJets, turnVector, unitJets } from "./jet-corner.ts";
import { type JetTerm, type JetTermState, localJets, makeStepPose, pointState } from "./jet-term.ts";
import type { Pose } from "./pose.ts";
import { angleOverSine, rotationVectorFactor, type WithDerivatives } from "./turn-factors.ts";
import { armPartner, type Softness, turnRatesOf } from "./turn-terms.ts";

/** Terms of bushes that resist being turned as jets, in the order of buildTurnTerms. */
export function buildJetTurnTerms(all: JetCorner, corner: ElasticCorner, softness: Softness): JetTerm[] {
  const { geometry, elasticity } = corner;
  const terms: JetTerm[] = [];
  const push = (
    name: string,
    { jets, own }: Pick<JetTerm, "jets" | "own">,
    rate: Jet,
    soft: number,
    at: (pose: Pose, rack: number) => JetTermState,
  ): void => {
    terms.push({
      kind: "turn",
      name,
      jets,
      own,
      healthyRate: rate,
      rate: scaleJet(rate, soft),
      carriesPreload: false,
      play: 0,
      at,
    });
  };
  for (const { link: name, end, rate } of elasticity.rubber) {
    const link = geometry.links.find((l) => l.name === name);
    const turns = turnRatesOf(rate, rate.axis);
    if (!link || turns.length === 0) continue;
    const factorName = `${name}.${end}`;
    const partner = armPartner(geometry, link);
    const points = [link.inner, link.outer, ...(partner ? [partner.inner] : [])];
    const local = localJets(all, points, [factorName]);
    const { jets } = local;
    const factor = jets.rateFactor(factorName);
    const soft = softness(name, end);
    if (partner && end === "inner") {
      const hinge = unitJets(subtractVectors(jets.pointAt(partner.inner), jets.pointAt(link.inner)));
      const about = turns.reduce((sum, t) => {
        const c = dotVectors(jets.constant(t.about), hinge);
        return addJets(sum, scaleJet(multiplyJets(c, c), t.rate));
      }, jets.number(0));
      push(name, local, multiplyJets(factor, about), soft, (pose) => armTurn(jets, link, hinge, pose));
      continue;
    }
    for (const turn of turns)
      push(name, local, scaleJet(factor, turn.rate), soft, (pose, rack) =>
        linkTurn(jets, link, jets.constant(turn.about), end === "outer", rack, makeStepPose(jets, pose)),
      );
  }
  const { strut } = geometry;
  if (strut && elasticity.strutTop?.conical !== undefined) {
    const local = localJets(all, [strut.top, strut.axisPoint], ["strut_top"]);
    const { jets } = local;
    const [first, second, line] = triadJets(
      jets,
      subtractVectors(jets.pointAt(strut.top), jets.pointAt(strut.axisPoint)),
    );
    const rate = scaleJet(jets.rateFactor("strut_top"), elasticity.strutTop.conical);
    for (const about of [first, second])
      push("strut_top", local, rate, softness("strut_top", null), (pose) =>
        lineTilt(jets, line, about, makeStepPose(jets, pose)),
      );
  }
  if (geometry.trailingArm && elasticity.trailingArm) {
    const local = localJets(all, [], ["trailing_arm"]);
    const { jets } = local;
    const factor = jets.rateFactor("trailing_arm");
    for (const turn of turnRatesOf(elasticity.trailingArm, elasticity.trailingArm.axis))
      push("trailing_arm", local, scaleJet(factor, turn.rate), softness("trailing_arm", null), (pose) =>
        knuckleTurn(jets, jets.constant(turn.about), makeStepPose(jets, pose)),
      );
  }
  return terms;
}

/** Angle of an arm about the line of its inner points, as a measure of its outer joint. */
function armTurn(jets: JetCorner, link: LinkGeometry, hinge: JetVector, pose: Pose): JetTermState {
  const inner = jets.pointAt(link.inner);
  const outer = jets.pointAt(link.outer);
  const arm = subtractVectors(outer, inner);
  const e2 = unitJets(subtractVectors(arm, scaleVector(hinge, dotVectors(arm, hinge))));
  const e3 = crossVectors(hinge, e2);
  const { x, r } = carryJet(jets, makeStepPose(jets, pose), outer);
  const d = subtractVectors(x, inner);
  const a = dotVectors(d, e2);
  const b = dotVectors(d, e3);
  const q = addJets(multiplyJets(a, a), multiplyJets(b, b));
  const gradient = addVectors(scaleVector(e2, scaleJet(divideJets(b, q), -1)), scaleVector(e3, divideJets(a, q)));
  const q2 = multiplyJets(q, q);
  const h22 = divideJets(scaleJet(multiplyJets(a, b), 2), q2);
  const h23 = divideJets(subtractJets(multiplyJets(b, b), multiplyJets(a, a)), q2);
  return pointState(jets, r, atan2Jets(b, a), gradient, (dx) => {
    const d2 = dotVectors(e2, dx);
    const d3 = dotVectors(e3, dx);
    return addVectors(
      scaleVector(e2, addJets(multiplyJets(h22, d2), multiplyJets(h23, d3))),
      scaleVector(e3, subtractJets(multiplyJets(h23, d2), multiplyJets(h22, d3))),
    );
  });
}

/** A function of a jet and its first two derivatives as jets. */
function withDerivatives(x: Jet, f: (x: number) => WithDerivatives): readonly [Jet, Jet, Jet] {
  const [f0, f1, f2, f3] = f(x[0] as number);
  return [composeJet(x, f0, f1), composeJet(x, f1, f2), composeJet(x, f2, f3)];
}

/** measureSwing as jets. */
function swing(q: JetVector, u0: JetVector, u: JetVector) {
  const p = crossVectors(q, u0);
  const [f, f1, f2] = withDerivatives(dotVectors(u0, u), angleOverSine);
  const pu = dotVectors(p, u);
  const f1pu = multiplyJets(f1, pu);
  return {
    value: multiplyJets(f, pu),
    gradient: addVectors(scaleVector(u0, f1pu), scaleVector(p, f)),
    bend: (d: JetVector): JetVector => {
      const along = dotVectors(u0, d);
      const ofLine = addJets(multiplyJets(multiplyJets(f2, pu), along), multiplyJets(f1, dotVectors(p, d)));
      return addVectors(scaleVector(u0, ofLine), scaleVector(p, multiplyJets(f1, along)));
    },
  };
}

/** writeLinkTurn as jets. */
function linkTurn(
  jets: JetCorner,
  link: LinkGeometry,
  q: JetVector,
  fromKnuckle: boolean,
  rack: number,
  pose: JetPose,
): JetTermState {
  const outer = jets.pointAt(link.outer);
  const design = unitJets(subtractVectors(outer, jets.pointAt(link.inner)));
  const inner = addVectors(jets.pointAt(link.inner), jets.constant([0, link.steered ? rack : 0, 0]));
  const { x, r } = carryJet(jets, pose, outer);
  const line = subtractVectors(x, inner);
  const length = lengthOf(line);
  const shorter = divideJets(jets.number(1), length);
  const u = scaleVector(line, shorter);
  const carry = (a: JetVector): JetVector => (fromKnuckle ? turnVector(pose, a) : a);
  const { value, gradient: g, bend } = swing(carry(q), carry(design), u);
  const ug = dotVectors(u, g);
  const force = scaleVector(subtractVectors(g, scaleVector(u, ug)), shorter);
  const moment = crossVectors(r, force);
  return {
    value,
    row: [...force, ...(fromKnuckle ? subtractVectors(moment, crossVectors(u, g)) : moment)],
    along: (v, w) => {
      const step = jets.constant(w);
      const dr = crossVectors(step, r);
      const dx = addVectors(jets.constant(v), dr);
      const stretch = dotVectors(u, dx);
      const du = scaleVector(subtractVectors(dx, scaleVector(u, stretch)), shorter);
      const dg = fromKnuckle
        ? addVectors(crossVectors(step, g), bend(subtractVectors(du, crossVectors(step, u))))
        : bend(du);
      const across = subtractVectors(
        subtractVectors(dg, scaleVector(du, ug)),
        scaleVector(u, addJets(dotVectors(du, g), dotVectors(u, dg))),
      );
      const dForce = scaleVector(subtractVectors(across, scaleVector(force, stretch)), shorter);
      const dMoment = addVectors(crossVectors(dr, force), crossVectors(r, dForce));
      const ofKnuckle = addVectors(crossVectors(du, g), crossVectors(u, dg));
      return [...dForce, ...(fromKnuckle ? subtractVectors(dMoment, ofKnuckle) : dMoment)];
    },
  };
}

/** writeLineTilt as jets. */
function lineTilt(jets: JetCorner, line: JetVector, q: JetVector, pose: JetPose): JetTermState {
  const now = turnVector(pose, line);
  const { value, gradient: g, bend } = swing(q, line, now);
  const zero = jets.constant([0, 0, 0]);
  return {
    value,
    row: [...zero, ...crossVectors(now, g)],
    along: (_v, w) => {
      const da = crossVectors(jets.constant(w), now);
      return [...zero, ...addVectors(crossVectors(da, g), crossVectors(now, bend(da)))];
    },
  };
}

/** writeKnuckleTurn as jets. */
function knuckleTurn(jets: JetCorner, q: JetVector, pose: JetPose): JetTermState {
  const o = rotationVectorJets(pose);
  const [k, k1] = withDerivatives(dotVectors(o, o), rotationVectorFactor);
  const twice = (a: JetVector, b: JetVector, c: JetVector): JetVector => crossVectors(a, crossVectors(b, c));
  const half = jets.number(0.5);
  const zero = jets.constant([0, 0, 0]);
  return {
    value: dotVectors(q, o),
    row: [...zero, ...addVectors(addVectors(q, scaleVector(crossVectors(o, q), half)), scaleVector(twice(o, o, q), k))],
    along: (_v, w) => {
      const step = jets.constant(w);
      const d = addVectors(
        subtractVectors(step, scaleVector(crossVectors(o, step), half)),
        scaleVector(twice(o, o, step), k),
      );
      const dk = scaleJet(multiplyJets(k1, dotVectors(o, d)), 2);
      const bend = addVectors(
        scaleVector(twice(o, o, q), dk),
        scaleVector(addVectors(twice(d, o, q), twice(o, d, q)), k),
      );
      return [...zero, ...addVectors(scaleVector(crossVectors(d, q), half), bend)];
    },
  };
}

/** rotationVector as jets: half the odd part of the rotation times angle over sine. */
function rotationVectorJets({ rows }: JetPose): JetVector {
  const odd: JetVector = [
    subtractJets(rows[2][1], rows[1][2]),
    subtractJets(rows[0][2], rows[2][0]),
    subtractJets(rows[1][0], rows[0][1]),
  ];
  const trace = addJets(addJets(rows[0][0], rows[1][1]), rows[2][2]);
  const cosine = scaleJet(trace, 0.5);
  cosine[0] = (cosine[0] as number) - 0.5;
  const [f] = withDerivatives(cosine, angleOverSine);
  return scaleVector(odd, scaleJet(f, 0.5));
}
