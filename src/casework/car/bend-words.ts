import type { WheelPlace } from "#engines/linkage";
import { degreesFromRadians, mmFromMetres } from "#quantity";
import { layoutDoubt, STANDARD_GRAVITY } from "#vehicle";
import type { WholeCar } from "../car.ts";
import { formatNumber } from "../fault/format-figure.ts";
import { isSignSure } from "../fault/settle.ts";
import { GRIP } from "../fault/usable-force.ts";
import { jointWords } from "../hold/hold-words.ts";
import { type BendFacts, PLACE_WORDS, sinks } from "./bend-facts.ts";
import type { Give } from "./bend-give.ts";
import { spreadWords, USUAL_TYRE_RATE } from "./loaded-car.ts";

/** The words of a car in a bend, every number in them taken from where it stands. */
export function describeBend(facts: BendFacts): Pick<WholeCar, "sentence" | "howSure" | "computedSo"> {
  const { question, models, draws } = facts;
  return {
    sentence: [bendSentence(facts), ...gripSentence(facts), ...givingSentence(facts), ...changedSentence(facts)].join(
      " ",
    ),
    howSure: `${layoutDoubt(models.front.assembly, ["front", "rear"])}Bands hold 95 %. Those of lean, nod and loads are from ${draws} cars drawn as this one may be (fixed seed): hard points and rubber of both axles from their rung, ${spreadWords(question.family)} (common practice, no source). Those of what joints give are exact derivatives by every point and rate.`,
    computedSo: `Springs, bars and tyres (${formatNumber(USUAL_TYRE_RATE / 1000, 0)} N/mm each, common practice, no source) with the linkage itself, no roll-centre formula; wheels of an axle share its sideways force by their loads and brake or drive alike, a brake at the patch, a shaft at the wheel centre. Joints give at the height each wheel then has; their give is not led back to the lean. No limit of grip.`,
  };
}

/** To the nearest ten: what moves is known to some hundred. */
const newtons = (force: number): string => `${formatNumber(10 * Math.round(Math.abs(force) / 10), 0)} N`;
const gs = (acceleration: number): string => `${formatNumber(Math.abs(acceleration) / STANDARD_GRAVITY, 2)} g`;

function bendSentence({ motion: { by, along }, state }: BendFacts): string {
  const lean = `the body leans ${formatNumber(Math.abs(degreesFromRadians(state.roll)), 1)}°`;
  const { front, rear } = state.moved;
  const share = formatNumber((100 * front) / (front + rear), 0);
  const moves = `${newtons(front)} go from the inner to the outer front wheel and ${newtons(rear)} at the rear, so the front takes ${share} % of what moves`;
  const millimetres = (axle: "front" | "rear"): string => formatNumber(Math.abs(mmFromMetres(sinks(axle, state))), 0);
  const way = (axle: "front" | "rear"): string => (sinks(axle, state) > 0 ? "down" : "up");
  const nods = `${newtons(state.movedForward)} go to the ${state.movedForward > 0 ? "front" : "rear"} axle, and the body goes ${way("front")} ${millimetres("front")} mm in front and ${way("rear")} ${millimetres("rear")} mm at the rear`;
  const driven = along < 0 ? `Braking with ${gs(along)}` : `Driving with ${gs(along)}`;
  if (by === 0 && along === 0)
    return "The car stands still: ask for a bend, brake or drive, and here stands what moves on its wheels.";
  if (by === 0) return `${driven}, ${nods}.`;
  const bend = `a steady bend to the ${by > 0 ? "left" : "right"} at ${gs(by)}`;
  return along === 0 ? `In ${bend} ${lean}; ${moves}.` : `${driven} in ${bend}, ${lean}; ${moves}. ${nods}.`;
}

/** Said where sideways and along the car together are more than tyres pass on. */
function gripSentence({ motion: { by, along } }: BendFacts): readonly string[] {
  const both = Math.hypot(by, along);
  return both > GRIP * STANDARD_GRAVITY
    ? [`Together that is ${gs(both)}, more than road tyres pass on (grip ${GRIP}, from memory): no car does it.`]
    : [];
}

function turned({ toe, sd }: Give): string {
  if (!isSignSure(toe, sd)) return "turns one way or the other, which is not sure";
  return `turns ${formatNumber(Math.abs(degreesFromRadians(toe)), 2)}° ${toe > 0 ? "in" : "out"}`;
}

/** What the joints of the loaded wheels give: the outer ones, or without a bend the left ones, as the right ones do the same. */
function givingSentence({ motion: { by, along }, gives }: BendFacts): readonly string[] {
  if (by === 0 && along === 0) return [];
  const side = by >= 0 ? "Right" : "Left";
  const [front, rear] = by === 0 ? [gives.frontLeft, gives.rearLeft] : [gives[`front${side}`], gives[`rear${side}`]];
  if (!front || !rear) return [];
  const [one, other] =
    by === 0 ? ["each front wheel", "each rear one"] : ["the outer front wheel", "the outer rear one"];
  return [`Under these forces the joints give: ${one} ${turned(front)}, ${other} ${turned(rear)}.`];
}

function changedSentence({ changed, gives }: BendFacts): readonly string[] {
  if (changed === null) return [];
  const as = changed.as.includes(",") ? ` (${changed.as})` : ` ${changed.as}`;
  const which = `With the ${jointWords({ label: changed.words })}${as}`;
  if ("findings" in changed.told) {
    const [why] = changed.told.findings;
    return [`${which} nothing is computed: ${why ? `${why.got}; needed: ${why.needed}` : "it has no rubber"}.`];
  }
  const { figure } = changed.told;
  const wheel = `the ${PLACE_WORDS[changed.place]} wheel`;
  if (!figure.signSure)
    return [`${which} ${wheel} turns further one way or the other, which is not sure; the others stay as they are.`];
  const further = `${formatNumber(Math.abs(figure.value), 2)}° ${figure.value > 0 ? "in" : "out"}`;
  return [
    `${which} ${wheel} turns a further ${further}${besideSound(gives, changed.place)}; the others stay as they are.`,
  ];
}

const besideSound = (gives: BendFacts["gives"], place: WheelPlace): string => {
  const give = gives[place];
  return give && isSignSure(give.toe, give.sd)
    ? `, beside ${formatNumber(Math.abs(degreesFromRadians(give.toe)), 2)}° ${give.toe > 0 ? "in" : "out"} by sound joints`
    : "";
};
