import { mmFromMetres } from "#quantity";
import { formatBand, formatFigure, formatNumber } from "../fault/format-figure.ts";
import { originWords, percent } from "../fault/phrases.ts";
import type { HandTest, HandWay } from "../hold.ts";
import type { HandFacts } from "./hand-facts.ts";
import type { HandFigures } from "./hand-figures.ts";
import { formatForce, heldTitle, jointWords } from "./hold-words.ts";
import { wayWords } from "./way-words.ts";

/** An eye tells so much at the tyre's edge or between two parts (key hand-means in docs/sources.md), mm. */
export const TOLD_FROM_MM = 0.5;

/** What is read as moving, and how much. */
function movesWords(way: HandWay, much: string): string {
  if (way.kind === "bar") return `its two parts move ${much} against each other`;
  if (way.kind === "push") return `it moves ${much} there`;
  return `the ${way.at === "12-6" ? "top" : "front"} of the tyre moves ${much}`;
}

const capital = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}`;

function verdictOf({ headline }: HandFigures): HandTest["tells"] {
  const [low, high] = headline.band ?? [headline.value, headline.value];
  const smallest = low * high < 0 ? 0 : Math.min(Math.abs(low), Math.abs(high));
  if (smallest >= TOLD_FROM_MM) return "yes";
  return Math.max(Math.abs(low), Math.abs(high)) < TOLD_FROM_MM ? "no" : "too-close";
}

/** What a hand test says, every number in it taken from its figures. */
export function describeHandTest(
  facts: HandFacts,
  figures: HandFigures,
): Pick<HandTest, "tells" | "sentence" | "howSure"> {
  const { question, position, assembly, tornShare, movement } = facts;
  const tells = verdictOf(figures);
  const by = (key: string) => figures.all.find((figure) => figure.key === key);
  const [sound, faulty] = [by("hand-sound"), by("hand-faulty")];
  const state = question.fault.kind === "loose" ? "loose" : "torn";
  const thing = jointWords(position);
  const shut = question.fault.kind === "loose" && movement.free === 0;
  const moves =
    figures.headline.signSure && sound && faulty
      ? `${movesWords(question.way, formatFigure(faulty))} with the ${thing} ${state}, ${formatFigure(sound)} with it sound`
      : `how much further it moves with the ${thing} ${state} is not sure`;
  const pressed = shut
    ? ` ${formatForce(movement.load)} press the joint together and the hand brings ${formatForce(movement.brings)}: its play stays shut.`
    : "";
  const told = {
    yes: "A person tells the difference.",
    no: "No person tells the difference: this way does not find it.",
    "too-close": "Whether a person tells the difference is too close to call.",
  }[tells];
  const play = question.fault.kind === "loose" ? formatNumber(mmFromMetres(question.fault.play), 1) : null;
  const parts = [
    tornShare
      ? `Torn means ${percent(tornShare.low)} to ${percent(tornShare.high)} % of the sound rate (${originWords[tornShare.origin] ?? tornShare.origin}).`
      : "",
    question.fault.kind === "loose" && question.fault.assumed
      ? `The play of ${play} mm is assumed: nobody has measured it.`
      : "",
    figures.headline.signSure && figures.headline.band
      ? `With all that is uncertain the difference lies at ${formatBand(figures.headline)} (95 %).`
      : "",
    `An eye tells ${formatNumber(TOLD_FROM_MM, 1)} mm (from memory). What carries the wheel is taken as rigid.`,
  ];
  return {
    tells,
    sentence: `${capital(heldTitle(assembly, question.held).toLowerCase())}, with ${wayWords(question.way)}, ${moves}.${pressed} ${told}`,
    howSure: parts.filter((part) => part !== "").join(" "),
  };
}
