import { computeOrderFrequency } from "#engines/rubber";
import type { Finding } from "#numeric";
import { kmPerHourFromMetresPerSecond, type Metres, type MetresPerSecond, mmFromMetres } from "#quantity";
import type { Family } from "#vehicle";
import type { Spread } from "../sampling/spread.ts";
import type { Shake, ShakeLine, ShakeQuestion } from "../shake.ts";
import { computeBushLines, FREQUENCIES } from "./bush-dynamics.ts";
import { type PreparedShake, prepareShake, refuseShake } from "./prepare-shake.ts";
import { indexOfSpeed, isDrawnSpeed, SPEEDS } from "./shake-curves.ts";
import type { ShakeFacts } from "./shake-facts.ts";
import { buildShakeFigures } from "./shake-figures.ts";
import { NEW_DISC_VARIATION } from "./shake-wheel.ts";
import { describeShake } from "./shake-words.ts";

/** More than any disc that still brakes (invented), metres. */
const MOST_VARIATION = 0.2e-3;

type Answer = { readonly shake: Shake } | { readonly findings: readonly Finding[] };

const lineOf = (
  state: ShakeLine["state"],
  values: readonly number[],
  spreads: readonly Spread[],
  variation: Metres,
): ShakeLine => ({
  state,
  values: values.map((value) => value * variation),
  low: spreads.map(({ low }) => low * variation),
  high: spreads.map(({ high }) => high * variation),
});

/** What is wrong with the disc or the speed asked about; null where nothing is. */
function checkAsked(variation: Metres, speed: MetresPerSecond | null): ReturnType<typeof refuseShake> | null {
  if (!(variation > 0 && variation <= MOST_VARIATION))
    return refuseShake(
      "out-of-range",
      "variation",
      `${mmFromMetres(variation)} mm`,
      `more than 0, at most ${mmFromMetres(MOST_VARIATION)} mm`,
      "Read it with an outside micrometer at eight points around the disc.",
    );
  if (speed !== null && !isDrawnSpeed(speed))
    return refuseShake(
      "out-of-range",
      "speed",
      `${kmPerHourFromMetresPerSecond(speed).toFixed(0)} km/h`,
      `${kmPerHourFromMetresPerSecond(SPEEDS[0] as number).toFixed(0)} to ${kmPerHourFromMetresPerSecond(SPEEDS.at(-1) as number).toFixed(0)} km/h`,
      "The speed at which it is felt, as the driver says it.",
    );
  return null;
}

function answerFor(prepared: PreparedShake, question: ShakeQuestion): Answer {
  const { family, assembly, position, parts, model, curves, band } = prepared;
  const variation = question.variation ?? NEW_DISC_VARIATION;
  const refused = checkAsked(variation, question.speed ?? null);
  if (refused) return refused;
  const felt = question.speed === undefined ? null : indexOfSpeed(question.speed);
  const facts: ShakeFacts = { assembly, position, model, curves, band, variation, felt };
  const figures = buildShakeFigures(facts);
  return {
    shake: {
      question,
      axle: assembly.axle,
      rung: assembly.rung,
      invented: family.invented,
      parts,
      speeds: SPEEDS,
      lines: [
        lineOf("sound", curves.sound, band.sound, variation),
        lineOf("leaked", curves.leaked, band.leaked, variation),
      ],
      bush: {
        frequencies: FREQUENCIES,
        lines: computeBushLines(model.bush, band.bush),
        worst: computeOrderFrequency(1, SPEEDS[curves.worst] as number, model.circumference),
      },
      worst: {
        speed: SPEEDS[curves.worst] as number,
        atEnd: curves.worst === 0 || curves.worst === SPEEDS.length - 1,
      },
      felt: felt === null ? null : (SPEEDS[felt] as number),
      headline: figures.headline,
      figures: figures.all,
      ...describeShake(facts, figures),
    },
  };
}

/**
 * The chain from an uneven disc over brake torque and the corner's flexibility along the road to the shake of its wheel,
 * with the fluid in a bush and without, over the road speed; with bands, as figures and words. Static pose and load play
 * no part, since the leaked bush keeps its static rate. Returns findings where it cannot be computed.
 */
export const computeShake = (family: Family, question: ShakeQuestion): Answer => {
  const answer = prepareShake(family, question.corner, question.position);
  return "findings" in answer ? answer : answerFor(answer.prepared, question);
};

/** computeShake that keeps the last bush it was asked about, so that another disc or speed is told at once. */
export function rememberShake(): typeof computeShake {
  let last: { readonly key: string; readonly answer: ReturnType<typeof prepareShake> } | null = null;
  return (family, question) => {
    const key = JSON.stringify([question.corner, question.position, family]);
    if (last?.key !== key) last = { key, answer: prepareShake(family, question.corner, question.position) };
    return "findings" in last.answer ? last.answer : answerFor(last.answer.prepared, question);
  };
}
