import {
  addJets,
  addVectors,
  crossVectors,
  divideJets,
  dotVectors,
  type Jet,
  type JetVector,
  multiplyJets,
  scaleJet,
  scaleVector,
  subtractJets,
  subtractVectors,
} from "#numeric";
import type { ElasticCorner } from "./elastic-corner.ts";
import { carryJet, type JetCorner, type JetPose, triadJets, turnVector, unitJets } from "./jet-corner.ts";
import { type JetTerm, type JetTermState, localJets, makeStepPose, pointState } from "./jet-term.ts";
import type { Softness } from "./turn-terms.ts";

/** Unit vector of a direction's part across a unit axis. */
export const acrossJets = (axis: JetVector, direction: JetVector): JetVector =>
  unitJets(subtractVectors(direction, scaleVector(axis, dotVectors(direction, axis))));

/** Mount terms as jets, in the order of buildStrutTopTerms and buildTrailingArmTerms. */
export function buildJetMountTerms(all: JetCorner, corner: ElasticCorner, softness: Softness): JetTerm[] {
  return [
    ...strutTopTerms(all, corner, softness("strut_top", null)),
    ...trailingArmTerms(all, corner, softness("trailing_arm", null)),
  ];
}

function strutTopTerms(all: JetCorner, { geometry, elasticity }: ElasticCorner, soft: number): JetTerm[] {
  if (!geometry.strut) return [];
  const { jets, own } = localJets(all, [geometry.strut.top, geometry.strut.axisPoint], ["strut_top"]);
  const top = jets.pointAt(geometry.strut.top);
  const axisPoint = jets.pointAt(geometry.strut.axisPoint);
  const rate = elasticity.strutTop;
  const triad = triadJets(jets, subtractVectors(top, axisPoint));
  const mount = (perMetre: number | undefined, state: (pose: JetPose) => JetTermState): JetTerm => {
    const healthy = perMetre === undefined ? null : scaleJet(jets.rateFactor("strut_top"), perMetre);
    return {
      kind: "mount",
      name: "strut_top",
      jets,
      own,
      healthyRate: healthy,
      rate: healthy && scaleJet(healthy, soft),
      carriesPreload: true,
      play: 0,
      at: (pose) => state(makeStepPose(jets, pose)),
    };
  };
  if (!rate?.voided)
    return ([0, 1] as const).map((which) =>
      mount(rate?.radial, (pose) => carriedOffset(jets, pose, top, axisPoint, triad[which])),
    );
  const axis = triad[2];
  const through = acrossJets(axis, jets.constant(rate.voided.through));
  return [
    mount(rate.voided.rate, (pose) => bodyOffset(jets, pose, top, axisPoint, axis, through)),
    mount(rate.radial, (pose) => bodyOffset(jets, pose, top, axisPoint, axis, crossVectors(axis, through))),
  ];
}

function trailingArmTerms(all: JetCorner, corner: ElasticCorner, soft: number): JetTerm[] {
  const arm = corner.geometry.trailingArm;
  if (!arm) return [];
  const rate = corner.elasticity.trailingArm;
  const { jets, own } = localJets(all, [arm.bush], ["trailing_arm"]);
  const bush = jets.pointAt(arm.bush);
  const [first, second, axis] = triadJets(jets, jets.constant(rate?.axis ?? arm.freeAxis ?? [0, 1, 0]));
  const through = rate?.voided && acrossJets(axis, jets.constant(rate.voided.through));
  const directions = through ? [through, crossVectors(axis, through), axis] : [first, second, axis];
  const rates = [rate?.voided?.rate ?? rate?.radial, rate?.radial, rate?.axial ?? rate?.radial];
  return directions.flatMap((e, which): JetTerm[] => {
    if (which === 2 && arm.freeAxis && !rate) return [];
    const value = rates[which];
    const healthy = value === undefined ? null : scaleJet(jets.rateFactor("trailing_arm"), value);
    return [
      {
        kind: "mount",
        name: "trailing_arm",
        jets,
        own,
        healthyRate: healthy,
        rate: healthy && scaleJet(healthy, soft),
        carriesPreload: !(which === 2 && arm.freeAxis),
        play: 0,
        at: (pose) => {
          const { x, r } = carryJet(jets, makeStepPose(jets, pose), bush);
          const zero = jets.constant([0, 0, 0]);
          return pointState(jets, r, dotVectors(e, subtractVectors(x, bush)), e, () => zero);
        },
      },
    ];
  });
}

/** writeCarriedOffset as jets. */
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

/** writeBodyOffset as jets, name by name. */
function bodyOffset(
  jets: JetCorner,
  pose: JetPose,
  top: JetVector,
  axisPoint: JetVector,
  a: JetVector,
  e: JetVector,
): JetTermState {
  const minus = jets.number(-1);
  const now = turnVector(pose, a);
  const k = addJets(jets.number(1), dotVectors(a, now));
  const beta = divideJets(dotVectors(now, e), k);
  const s = addVectors(a, now);
  const tilted = subtractVectors(e, scaleVector(s, beta));
  const { r } = carryJet(jets, pose, axisPoint);
  const d = subtractVectors(subtractVectors(top, pose.centre), r);
  const nh = crossVectors(now, subtractVectors(e, scaleVector(a, beta)));
  const sdOverK = divideJets(dotVectors(s, d), k);
  const turn = scaleVector(addVectors(scaleVector(nh, sdOverK), scaleVector(crossVectors(now, d), beta)), minus);
  return {
    value: dotVectors(tilted, d),
    row: [...scaleVector(tilted, minus), ...subtractVectors(turn, crossVectors(r, tilted))],
    along: (v, w) => {
      const step = jets.constant(w);
      const dr = crossVectors(step, r);
      const dd = scaleVector(addVectors(jets.constant(v), dr), minus);
      const da = crossVectors(step, now);
      const dk = dotVectors(a, da);
      const quotient = (rise: Jet, of: Jet): Jet => divideJets(subtractJets(rise, multiplyJets(of, dk)), k);
      const dBeta = quotient(dotVectors(da, e), beta);
      const dTilted = scaleVector(addVectors(scaleVector(s, dBeta), scaleVector(da, beta)), minus);
      const h = subtractVectors(e, scaleVector(a, beta));
      const dNh = subtractVectors(crossVectors(da, h), scaleVector(crossVectors(now, a), dBeta));
      const dSdOverK = quotient(addJets(dotVectors(da, d), dotVectors(s, dd)), sdOverK);
      const ofNh = addVectors(scaleVector(dNh, sdOverK), scaleVector(nh, dSdOverK));
      const ofBeta = addVectors(
        scaleVector(crossVectors(now, d), dBeta),
        scaleVector(addVectors(crossVectors(da, d), crossVectors(now, dd)), beta),
      );
      const dTurn = scaleVector(addVectors(ofNh, ofBeta), minus);
      return [
        ...scaleVector(dTilted, minus),
        ...subtractVectors(dTurn, addVectors(crossVectors(dr, tilted), crossVectors(r, dTilted))),
      ];
    },
  };
}
