import { computeDynamicStiffness, computeOrderFrequency, type FluidState } from "#engines/rubber";
import { degreesFromRadians, kmPerHourFromMetresPerSecond, mmFromMetres, perMmFromNewtonsPerMetre } from "#quantity";
import { layoutDoubt } from "#vehicle";
import { formatBand, formatFigure, formatNumber } from "../fault/format-figure.ts";
import { cornerWords, originWords } from "../fault/phrases.ts";
import type { Figure } from "../fault-effect.ts";
import type { Shake } from "../shake.ts";
import { SPEEDS } from "./shake-curves.ts";
import type { ShakeFacts } from "./shake-facts.ts";
import type { ShakeFigures } from "./shake-figures.ts";

type Words = Pick<
  Shake,
  "sentence" | "hidden" | "bushAlone" | "judgedAgainst" | "howSure" | "whatElse" | "computedSo" | "cautions"
>;

const kmh = (index: number): string => formatNumber(kmPerHourFromMetresPerSecond(SPEEDS[index] ?? 0), 0);

/** The words of a shake, every number in them taken from its figures and curves. */
export function describeShake(facts: ShakeFacts, { headline, felt }: ShakeFigures): Words {
  const { assembly, position, variation } = facts;
  const fluid = assembly.links.find(({ name }) => name === position.joint?.link)?.innerJoint.fluid;
  const origin = fluid ? (originWords[fluid.origin] ?? fluid.origin) : "not known";
  return {
    sentence: [
      sentenceOf(facts, headline),
      ...(headline.signSure ? [...beginsAt(facts), ...feltWords(facts, felt)] : []),
    ].join(" "),
    hidden:
      "It looks sound: the rubber is whole, and a steady push or a lever moves it as far as a sound one, because the rubber alone makes the static rate. Ride height, toe and camber under a steady force stay as they were. What is gone is the damping. Look for an oil trace or a dry hollow, and move the arm to and fro: nothing slows it.",
    bushAlone: bushWords(facts),
    judgedAgainst:
      "No limit is published for this shake. Judged against a sound bush in the same place, on the same disc.",
    howSure: `${layoutDoubt(assembly, [assembly.axle])}The fluid's figures are ${origin}. With all that is uncertain: ${formatBand(headline) ?? "no band"} (95 %). Friction and clamp force lift and lower both curves alike and leave this figure as it is.`,
    whatElse: whatElseOf(facts),
    computedSo: `An uneven disc (${formatNumber(mmFromMetres(variation), 3)} mm, once per turn) at a held pedal pulls the wheel back and forth; the wheel answers on the balance of all links and joints of this corner, the bush with its stiffness over frequency. The other joints are taken without loss, the tyre as stiff: good well below 30 Hz.`,
    cautions: [
      "The vehicle maker's figures for this very car come first, and the law of the place where it is stricter.",
      "Never go under a car held by a jack only: rated stands on level ground, at the maker's points, the other wheels chocked.",
      "Work on steering, suspension and brakes belongs to people licensed for it where the law says so. This sheet is a computation, not an inspection.",
    ],
  };
}

function sentenceOf({ position, curves, band }: ShakeFacts, headline: Figure): string {
  const wheel = `the ${cornerWords(position.axle, position.side ?? "left")} wheel`;
  if (!headline.signSure)
    return `Whether ${wheel} shakes more under light braking once the fluid of this bush is gone is not sure.`;
  const range = `${kmh(Math.round(band.worst.low))} to ${kmh(Math.round(band.worst.high))}`;
  const where =
    curves.worst === SPEEDS.length - 1
      ? `at about ${kmh(curves.worst)} km/h, still rising`
      : `at about ${kmh(curves.worst)} km/h (${range}), where it is worst`;
  return `Under light braking ${where}, ${wheel} shakes ${formatFigure(headline)} as far along the road as on a sound bush${headline.value > 1 ? "" : ", so less"}; standing still nothing tells the two apart.`;
}

/** From which speed on it is clearly more, where that lies below the worst one. */
function beginsAt({ curves }: ShakeFacts): readonly string[] {
  const first = curves.leaked.findIndex((value, i) => value > 2 * (curves.sound[i] as number));
  return first > 0 && first < curves.worst ? [`It begins near ${kmh(first)} km/h, where it is twice as far.`] : [];
}

/** What it is at the speed at which the driver feels it. */
function feltWords({ felt }: ShakeFacts, figure: Figure | null): readonly string[] {
  if (felt === null || figure === null) return [];
  const at = `At ${kmh(felt)} km/h, where it is felt, `;
  return [
    figure.signSure
      ? `${at}it is ${formatFigure(figure)} as far (${formatBand(figure) ?? "no band"}).`
      : `${at}whether it is more than on a sound bush is not sure.`,
  ];
}

/** Pushed slowly the two are alike; at the frequency of the worst speed they are not. */
function bushWords({ model, curves }: ShakeFacts): string {
  const frequency = computeOrderFrequency(1, SPEEDS[curves.worst] as number, model.circumference);
  const read = (state: FluidState): string => {
    const { magnitude, lossAngle } = computeDynamicStiffness(model.bush, state, frequency);
    return `${formatNumber(perMmFromNewtonsPerMetre(magnitude), 0)} N/mm and a loss angle of ${formatNumber(degreesFromRadians(lossAngle), 0)}°`;
  };
  return `Pushed slowly both give alike. Shaken ${formatNumber(frequency, 0)} times a second, as at the worst speed, the sound one has ${read("sound")}, the one without fluid ${read("leaked")}: the loss angle is what damps.`;
}

function whatElseOf({ curves }: ShakeFacts): string {
  const { worst } = curves;
  const later = curves.leaked.findIndex((value, i) => i > worst && value < (curves.sound[i] as number));
  const parts: string[] = [];
  if (later >= 0)
    parts.push(`From ${kmh(later)} km/h on the wheel shakes less than on a sound bush: a fast stop feels smooth.`);
  parts.push("A disc thick at two places does the same at half of these speeds.");
  parts.push("A new disc hides it until it is uneven again; the bush stays the cause (from memory).");
  return parts.join(" ");
}
