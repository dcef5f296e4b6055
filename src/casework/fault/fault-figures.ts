import type { WheelBand } from "#engines/linkage";
import { type Jet, subtractJets } from "#numeric";
import { degreesFromRadians, perMmFromNewtonsPerMetre } from "#quantity";
import type { Figure } from "../fault-effect.ts";
import { scaledOrigin, setAngles, templateOrigin, wheelLoadOrigin } from "./assumed-inputs.ts";
import { type BandQuantity, bandOf, bandOfAngles, changesOf, isChangeSure } from "./change-band.ts";
import { jointOf, rateNamesAt } from "./corner-model.ts";
import { type FaultStates, middleShare, type PairBand } from "./fault-pair.ts";
import { firmerInputs, settleFirmness } from "./firmer-rubber.ts";
import { formatNumber } from "./format-figure.ts";
import { conditionWords, originWords, percent } from "./phrases.ts";
import { findSettlingReading, isSignSure, NEVER_SETTLED } from "./settle.ts";

export interface EffectFigures {
  readonly headline: Figure;
  readonly all: readonly Figure[];
}

const BALANCE =
  "Static balance of the knuckle on its links, joints and spring with the contact height held: sum of forces and moments = 0";
const BALANCE_OF_BODIES =
  "Static balance of all bodies on their joints, links and spring with the contact height held: sum of forces and moments on each = 0";
const PROPAGATION = "band, 95 %: exact derivatives by every hard-point coordinate and rate, added in squares";
const OVER_TORN = ", over the torn range";
const OVER_FIRMNESS =
  ", over the range of the rate; new rate over old: ratio of the shear moduli of both hardnesses, spread by readings and compounds";
const OWN_RATE = "this joint's own rate spreads the change as a factor and cannot turn its sign";
const SOURCE =
  "balance of links and rubber (two-force-links), bands by exact derivatives (implicit-function, gum); checked against two independent programs (linkage-reference, band-reference)";

const SOURCE_OF_BODIES =
  "balance of links and rubber (two-force-links), bands by exact derivatives (implicit-function, gum); docs/method/linkage-bodies.md";

const FIRMNESS_SOURCE = "; modulus from hardness (gent-hardness, hardness-scatter)";

/** How the band of a figure is made, its range said where the fault has one. */
const propagationOf = ({ tornShare, firmness }: FaultStates): string =>
  `${PROPAGATION}${tornShare ? OVER_TORN : firmness ? OVER_FIRMNESS : ""}`;

/** All figures of an effect; the first is what the page is about. */
export function buildFigures(states: FaultStates, loaded: PairBand, free: PairBand): EffectFigures {
  const inputs = inputsOf(states);
  const { rung } = states.model.assembly;
  const { jets } = states.sound.band;
  const ofBodies = states.model.assembly.bodies !== null;
  const balance = ofBodies ? BALANCE_OF_BODIES : BALANCE;
  const common = {
    rung,
    inputs,
    source: `${ofBodies ? SOURCE_OF_BODIES : SOURCE}${states.firmness ? FIRMNESS_SOURCE : ""}`,
  };
  const propagation = propagationOf(states);
  const { assembly } = states.model;
  const changed = (
    key: string,
    label: string,
    pair: PairBand,
    quantity: BandQuantity,
    relation: string,
    scale = 1,
  ): Figure => {
    const changes = changesOf(states, pair, quantity);
    const [middle, ...ends] = changes;
    const sure = pair.open === null && isChangeSure(changes);
    const values = ends.map((e) => e.value * scale);
    const [low, high] = bandOf(changes).map((bound) => bound * scale) as [number, number];
    const factor = middle.logSd > 0;
    const settle = (): string =>
      settleOpenPlay(states, pair) ??
      settleFirmness(states.firmness) ??
      findSettlingReading(jets, middle.jet, assembly, factor ? rateNamesAt(assembly, states.position) : []);
    return {
      ...common,
      key,
      label,
      value: middle.value * scale,
      unit: quantity === "forward" ? "mm" : "deg",
      u: middle.sd * Math.abs(scale),
      range: ends.length > 0 ? [Math.min(...values), Math.max(...values)] : null,
      band: [Math.min(low, high), Math.max(low, high)],
      relation: `${relation}. ${balance}; ${propagation}${factor ? `; ${OWN_RATE}` : ""}`,
      signSure: sure,
      settle: sure ? null : settle(),
    };
  };
  const absolute = (
    key: string,
    label: string,
    pair: PairBand,
    quantity: "toe" | "camber",
    which: "sound" | "faulty",
  ): Figure => {
    const angle = (jet: Jet) => ({
      value: degreesFromRadians(jet[0] as number),
      sd: degreesFromRadians(jets.deviation(jet)),
    });
    const jet = pair[which][quantity];
    const { value, sd } = angle(jet);
    const angles = which === "faulty" ? pair.ends.map((e) => angle(e[quantity])) : [];
    const ends = angles.map((end) => end.value);
    const open = which === "faulty" && pair.open !== null;
    const sure = !open && [{ value, sd }, ...angles].every((a) => isSignSure(a.value, a.sd) && a.value * value > 0);
    const settle = (): string =>
      (open ? settleOpenPlay(states, pair) : null) ?? findSettlingReading(jets, jet, assembly);
    return {
      ...common,
      key,
      label,
      value,
      unit: "deg",
      u: sd,
      range: ends.length > 0 ? [Math.min(...ends), Math.max(...ends)] : null,
      band: bandOfAngles([{ value, sd }, ...angles]),
      relation: `Angle of the wheel in balance, from the set angle at ride height. ${balance}; ${propagation}`,
      signSure: sure,
      settle: sure ? null : settle(),
    };
  };
  /** How far the force turns the wheel, from where it stands without any. */
  const turned = (which: "sound" | "faulty"): Figure => {
    const by = (under: WheelBand, without: WheelBand) => {
      const jet = subtractJets(under.toe, without.toe);
      return {
        jet,
        value: degreesFromRadians(jet[0] as number),
        sd: degreesFromRadians(jets.deviation(jet)),
      };
    };
    const middle = by(loaded[which], free[which]);
    const ends =
      which === "faulty" ? loaded.ends.flatMap((end, i) => (free.ends[i] ? [by(end, free.ends[i])] : [])) : [];
    const all = [middle, ...ends];
    const values = ends.map(({ value }) => value);
    const sure = all.every(({ value, sd }) => isSignSure(value, sd) && value * middle.value > 0);
    return {
      ...common,
      key: `toe-turned-${which}`,
      label: `Toe, ${which === "sound" ? which : fault}, turned by this force`,
      value: middle.value,
      unit: "deg",
      u: middle.sd,
      range: values.length > 0 ? [Math.min(...values), Math.max(...values)] : null,
      band: bandOfAngles(all),
      relation: `toe at the stated force - toe without tyre force. ${balance}; ${propagation}`,
      signSure: sure,
      settle: sure ? null : findSettlingReading(jets, middle.jet, assembly),
    };
  };
  const fault = states.question.fault.kind;
  const headline = changed(
    "toe-change",
    `Toe, ${fault} less sound, at this force`,
    loaded,
    "toe",
    "toe(faulty) - toe(sound), both at the stated force",
  );
  const all: Figure[] = [
    headline,
    absolute("toe-faulty", `Toe, ${fault}, at this force`, loaded, "toe", "faulty"),
    absolute("toe-sound", "Toe, sound, at this force", loaded, "toe", "sound"),
    changed(
      "toe-shift",
      "Toe, there without any force",
      free,
      "toe",
      "toe(faulty) - toe(sound), both without tyre force",
    ),
    changed(
      "camber-change",
      `Camber, ${fault} less sound, at this force`,
      loaded,
      "camber",
      "camber(faulty) - camber(sound), both at the stated force",
    ),
    changed(
      "centre-shift",
      "Wheel centre, forward of where a sound corner holds it",
      loaded,
      "forward",
      "x of the wheel centre, with the fault less sound, at the stated force",
    ),
    ...wanderOf(states, common),
    ...(fault === "firmer" ? [turned("faulty"), turned("sound")] : []),
  ];
  if (states.position.axle === "rear")
    all.push(
      changed(
        "thrust-change",
        "Thrust line, turned to the left where positive",
        loaded,
        "toe",
        "half the toe of the right wheel less half that of the left, as alignment.axle; positive points left",
        states.position.side === "right" ? 0.5 : -0.5,
      ),
    );
  return { headline, all };
}

/** How far the wheel can turn while the joint goes from one side of its play to the other; only where there is play. */
function wanderOf(states: FaultStates, common: Pick<Figure, "rung" | "inputs" | "source">): readonly Figure[] {
  const [one, other] = states.question.fault.kind === "loose" ? states.faulty.sidesAt(states.load) : [];
  if (one === undefined || other === undefined) return [];
  const { jets } = states.faulty.band;
  const jet = subtractJets(one.toe, other.toe);
  const value = Math.abs(degreesFromRadians(jet[0] as number));
  const sd = degreesFromRadians(jets.deviation(jet));
  const sure = isSignSure(value, sd);
  const propagation = propagationOf(states);
  return [
    {
      ...common,
      key: "toe-wander",
      label: "Toe, free to turn within the play by",
      value,
      unit: "deg",
      u: sd,
      range: null,
      band: bandOfAngles([{ value, sd }]),
      relation: `Difference of toe between the joint held on either side of its play. ${BALANCE}; ${propagation}`,
      signSure: sure,
      settle: sure ? null : findSettlingReading(jets, jet, states.model.assembly),
    },
  ];
}

/** What would settle on which side of its play a loose joint stands; null where that is sure. */
function settleOpenPlay({ model, faulty }: FaultStates, { open }: PairBand): string | null {
  if (open === null) return null;
  const reading = findSettlingReading(faulty.band.jets, open.reserve, model.assembly);
  const said = reading === NEVER_SETTLED ? "The force in it is too near to nought for any reading to tell." : reading;
  return `Whether the loose joint stands pulled, pushed or inside its play here is not sure. ${said}`.trim();
}

function inputsOf(states: FaultStates): Figure["inputs"] {
  const { model, question, tornShare } = states;
  const { assembly } = model;
  const { condition, fault } = question;
  const joint = jointOf(assembly, states.position);
  const mm = (m: number): string => `${formatNumber(m * 1000, 1)} mm`;
  const rate = (r: number | null): string =>
    r === null ? "rigid" : `${formatNumber(perMmFromNewtonsPerMetre(r), 0)} N/mm`;
  const inputs: { label: string; value: string }[] = [
    { label: "Condition", value: conditionWords(condition) },
    {
      label: "Held",
      value: `contact height, ${mm(condition.contactRise)} from ride height; rack ${mm(condition.rack)}`,
    },
    { label: "Wheel load standing", value: `${formatNumber(assembly.wheelLoad, 0)} N${wheelLoadOrigin(assembly)}` },
    { label: "Spring rate", value: `${rate(assembly.spring.rate)}${templateOrigin(assembly, "spring-rate")}` },
    { label: "Set at ride height", value: `${setAngles(assembly)}${templateOrigin(assembly, "set-angles")}` },
  ];
  if (joint) {
    inputs.push({
      label: `${states.position.label}, across`,
      value: `${rate(joint.radial)} ±${percent(2 * joint.rateSdShare)} %`,
    });
    if (joint.voided)
      inputs.push({ label: `${states.position.label}, through its voids`, value: rate(joint.voided.rate) });
    if (joint.axial !== null) inputs.push({ label: `${states.position.label}, along`, value: rate(joint.axial) });
  }
  if (tornShare) {
    inputs.push({
      label: "Rate left when torn",
      value: `${percent(tornShare.low)} to ${percent(tornShare.high)} %, middle ${percent(middleShare(tornShare))} %; ${originWords[tornShare.origin] ?? tornShare.origin}`,
    });
  } else if (fault.kind === "firmer") inputs.push(...firmerInputs(fault, states.firmness));
  else if (fault.kind === "loose")
    inputs.push({
      label: "Play, end to end",
      value: `${mm(fault.play)}${fault.assumed ? "; assumed, not measured" : ""}`,
    });
  const sds = assembly.points.map((p) => Math.max(...p.sd));
  inputs.push({
    label: "Hard points",
    value: `${assembly.points.length}, ±${formatNumber(2000 * Math.min(...assembly.points.map((p) => Math.min(...p.sd))), 0)} to ±${formatNumber(2000 * Math.max(...sds), 0)} mm${scaledOrigin(assembly)}`,
  });
  return inputs;
}
