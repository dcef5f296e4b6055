import { layoutDoubt } from "#vehicle";
import type { FaultEffect, FaultQuestion, Figure } from "../fault-effect.ts";
import { jointOf, linksAt } from "./corner-model.ts";
import type { EffectFigures } from "./fault-figures.ts";
import type { FaultStates } from "./fault-pair.ts";
import { howFirmWords, mayBeNoFirmer } from "./firmer-rubber.ts";
import { decimalsOf, formatBandSizes, formatFigure, formatNumber } from "./format-figure.ts";
import {
  conditionWords,
  cornerWords,
  faultWords,
  inOrOut,
  layoutWords,
  noticedWords,
  originWords,
  percent,
} from "./phrases.ts";

type Words = Pick<FaultEffect, "sentence" | "judgedAgainst" | "howSure" | "whatElse" | "computedSo" | "cautions">;

/** Below this an angle is said to be nothing a hand or a tyre would show, degrees (from memory, a working figure). */
const NOTHING = 0.02;

/** An angle without its sign. */
const size = (f: Figure): string => formatFigure({ ...f, value: Math.abs(f.value) });

/** The largest size a figure has with 95 %. */
const mostOf = ({ value, band }: Figure): number => Math.max(Math.abs(value), ...(band ?? []).map(Math.abs));

/** The words of an effect, every number in them taken from the figures. */
export function describeEffect(states: FaultStates, figures: EffectFigures, invented: boolean): Words {
  const { assembly } = states.model;
  const { headline } = figures;
  return {
    sentence: `${sentenceOf(
      states,
      headline,
      figures.all.find(({ key }) => key === "toe-wander"),
    )}${turnedWords(figures)}`,
    judgedAgainst: `No limit is published for toe under force; the set figure of toe holds at rest only. Judged against a sound ${states.position.kind === "ball-joint" ? "joint" : "bush"} in the same place.`,
    howSure: `${layoutDoubt(assembly, [assembly.axle])}${howSureOf(states, headline, invented)}`,
    whatElse: whatElseOf(states, figures),
    computedSo: `${layoutWords(assembly)} with rubber in the joints, in balance with ${formatNumber(assembly.wheelLoad / 1000, 1)} kN of wheel load standing. ${conditionWords(states.question.condition)}; contact height held. This one ${isFirmer(states.question) ? "change" : "fault"} alone: everything else on the corner is taken as sound.`,
    cautions: [
      "The vehicle maker's figures for this very car come first, and the law of the place where it is stricter.",
      "Never go under a car held by a jack only: rated stands on level ground, at the maker's points, the other wheels chocked.",
      "Work on steering, suspension and brakes belongs to people licensed for it where the law says so. This sheet is a computation, not an inspection.",
    ],
  };
}

function sentenceOf(states: FaultStates, headline: Figure, wander: Figure | undefined): string {
  const { position, question } = states;
  const corner = cornerWords(position.axle, position.side ?? "left");
  const thing = faultWords(position, question.fault);
  const when = conditionWords(question.condition);
  if (states.firmness && mayBeNoFirmer(states.firmness))
    return `${when}, nobody can say yet what the ${thing} does at the ${corner} wheel: by its hardness it may be no firmer than the sound one.`;
  if (!headline.signSure)
    return `${when}, nobody can say yet whether the ${thing} turns the ${corner} wheel in or out.${wander?.signSure ? ` Within its play it can turn by ${size(wander)}.` : ""}`;
  const largest = mostOf(headline);
  if (largest < NOTHING && isFirmer(question))
    return `${when} the ${thing} changes toe of the ${corner} wheel by less than ${NOTHING}°: toe will not tell it from a sound one.`;
  if (largest < NOTHING)
    return `${when} the ${thing} turns the ${corner} wheel by less than ${NOTHING}°: toe will not show this fault.`;
  const direction = inOrOut(headline.value);
  const seen = noticedWords(position.axle, position.side ?? "left", headline.value, question.condition);
  if (isFirmer(question))
    return `${when} the ${thing} holds the ${corner} wheel ${size(headline)} further ${direction} than a sound one does${bandWords(headline)}.`;
  return `${when} the ${thing} lets the ${corner} wheel turn ${direction} ${size(headline)} further. ${seen}`.trim();
}

/** How a turned thrust line and the way the car steps belong together: the tail follows the line, the nose goes the other way. */
function tailWords(thrust: number, { condition }: FaultQuestion): string {
  if (condition.braking === 0 && condition.drive === 0) return "";
  const [tail, nose] = thrust > 0 ? ["left", "right"] : ["right", "left"];
  return `: the tail follows it to the ${tail}, so the nose, and the car, goes to the ${nose}`;
}

/** How far the force turns the wheel with the firmer part and with the sound one; "" where that is not sure. */
function turnedWords({ headline, all }: EffectFigures): string {
  const [firmer, sound] = ["faulty", "sound"].map((which) => all.find(({ key }) => key === `toe-turned-${which}`));
  const shown = headline.signSure && mostOf(headline) >= NOTHING;
  if (!shown || !firmer?.signSure || !sound?.signSure) return "";
  return ` This force turns it ${size(firmer)} ${inOrOut(firmer.value)}${bandWords(firmer)}, with the sound one ${size(sound)} ${inOrOut(sound.value)}.`;
}

/** " (0.02 to 0.09°)"; "" where the band has both signs. */
const bandWords = (f: Figure): string => {
  const band = formatBandSizes(f);
  return band === null ? "" : ` (${band})`;
};

const isFirmer = ({ fault }: FaultQuestion): boolean =>
  fault.kind === "firmer" && ("hardness" in fault || fault.factor >= 1);

function howSureOf(states: FaultStates, headline: Figure, invented: boolean): string {
  const { tornShare, firmness, model, question, position } = states;
  const parts: string[] = [];
  if (tornShare)
    parts.push(
      `Torn means ${percent(tornShare.low)} to ${percent(tornShare.high)} % of the sound rate (${originWords[tornShare.origin] ?? tornShare.origin}).`,
    );
  if (question.fault.kind === "firmer") parts.push(howFirmWords(question.fault, firmness));
  if (question.fault.kind === "loose" && question.fault.assumed)
    parts.push(
      `The play of ${formatNumber(question.fault.play * 1000, 1)} mm is assumed: nobody has measured it, and the figure goes with it.`,
    );
  if (question.fault.kind === "loose")
    parts.push(
      linksAt(model.assembly, position).length > 1
        ? "The ball stands half its play off its middle, against the force it passes on; where that turns round, the wheel jumps."
        : "Play is a dead band along the link; where the force in it turns round, the wheel jumps.",
    );
  const rung = {
    layout: "known as a silhouette only",
    scaled: "scaled from a template",
    measured: invented ? "invented, to the tolerances of measured ones" : "measured",
    matched: invented ? "invented, to the tolerances of matched ones" : "matched to this car",
  }[model.assembly.rung];
  const joint = jointOf(model.assembly, position);
  const rate =
    question.fault.kind !== "loose" && joint && joint.radial !== null && joint.rateSdShare > 0
      ? ` The joint's own rate is known to ±${percent(2 * joint.rateSdShare)} %.`
      : "";
  parts.push(`Hard points are ${rung}.${rate}`);
  const band = formatBandSizes(headline);
  parts.push(
    headline.signSure && band !== null
      ? `With all of that: ${band} further ${inOrOut(headline.value)} (95 %).`
      : "So the sign is not 97.5 % sure and no figure is given.",
  );
  return parts.join(" ");
}

function whatElseOf({ question }: FaultStates, { all }: EffectFigures): string {
  const parts: string[] = [];
  const by = (key: string): Figure | undefined => all.find((f) => f.key === key);
  const thrust = by("thrust-change");
  const shift = by("toe-shift");
  const camber = by("camber-change");
  const centre = by("centre-shift");
  if (thrust?.signSure && mostOf(thrust) >= NOTHING / 2)
    parts.push(
      `The thrust line turns ${size(thrust)} to the ${thrust.value > 0 ? "left" : "right"}${tailWords(thrust.value, question)}.`,
    );
  if (shift) {
    if (mostOf(shift) < NOTHING)
      parts.push(
        isFirmer(question)
          ? "Without force nothing shows: an alignment reading will not tell it from a sound one."
          : "Without force nothing shows: an alignment reading will not find this fault.",
      );
    else if (shift.signSure)
      parts.push(`Without any force this wheel already stands ${size(shift)} further ${inOrOut(shift.value)}.`);
  }
  if (camber?.signSure) {
    const hardly = mostOf(camber) < 0.1;
    parts.push(
      hardly
        ? "Camber hardly changes, so a camber reading will not show it."
        : `Camber changes ${formatFigure(camber)}.`,
    );
  }
  if (centre?.signSure && Math.abs(centre.value) >= 0.1) {
    const moved = formatNumber(Math.abs(centre.value), decimalsOf(centre));
    parts.push(`The wheel stands ${moved} mm further ${centre.value < 0 ? "back" : "forward"}.`);
  }
  if (isFirmer(question)) parts.push("What it does to ride and noise is not computed.");
  return parts.join(" ") || "Nothing else that could be told apart.";
}
