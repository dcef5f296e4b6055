import { computeDynamicStiffness, type FluidState } from "#engines/rubber";
import { degreesFromRadians, kmPerHourFromMetresPerSecond, mmFromMetres, perMmFromNewtonsPerMetre } from "#quantity";
import { formatNumber } from "../fault/format-figure.ts";
import { originWords, percent } from "../fault/phrases.ts";
import type { Figure } from "../fault-effect.ts";
import type { Spread } from "../sampling/spread.ts";
import { FREQUENCIES } from "./bush-dynamics.ts";
import { SPEEDS } from "./shake-curves.ts";
import type { ShakeFacts } from "./shake-facts.ts";
import { angularAt, computeShakeForce } from "./shake-model.ts";
import { WHEEL_SPREAD } from "./shake-wheel.ts";

const SOURCE = "docs/method/rubber.md, checked in docs/verification.md";
const CHAIN =
  "torque 2 mu k_c (p/2) r, force = torque over rolling radius, movement = force C_b/(1 - M w² C_o), C_b and C_o from the balance of the corner with K = k_r(1 + i eta) + k_v z/(k_v + z) in its link, z = i w c - w² m; leaked without the last part";
const SAMPLED = (draws: number): string =>
  `band, 95 %: ${draws} draws with a fixed seed over hard points, rates, fluid, brake and mass`;

const kmh = (index: number): number => {
  const low = Math.floor(index);
  const [a, b] = [SPEEDS[low] ?? 0, SPEEDS[low + 1] ?? SPEEDS[low] ?? 0];
  return kmPerHourFromMetresPerSecond(a + (index - low) * (b - a));
};

/** The figure the page is about, that of the speed at which it is felt (null: nobody said one), and all of them. */
export interface ShakeFigures {
  readonly headline: Figure;
  readonly felt: Figure | null;
  readonly all: readonly Figure[];
}

const isSure = ({ low, high }: Spread): boolean => low > 1 || high < 1;

export function buildShakeFigures(facts: ShakeFacts): ShakeFigures {
  const { model, curves, band, assembly, variation } = facts;
  const common = { rung: assembly.rung, inputs: inputsOf(facts), source: SOURCE, range: null };
  const figure = (
    key: string,
    label: string,
    unit: Figure["unit"],
    value: number,
    spread: Spread | null,
    relation: string,
    scale = 1,
  ): Figure => ({
    ...common,
    key,
    label,
    unit,
    value: value * scale,
    u: (spread?.sd ?? 0) * scale,
    band: spread && [spread.low * scale, spread.high * scale],
    relation: spread ? `${relation}; ${SAMPLED(band.draws)}` : relation,
    signSure: true,
    settle: null,
  });
  const speed = SPEEDS[curves.worst] as number;
  const ratio = (key: string, label: string, value: number, spread: Spread, relation: string): Figure => ({
    ...figure(key, label, "times", value, spread, relation),
    signSure: isSure(spread),
    settle: isSure(spread) ? null : "Stiffness and loss angle of this very bush on a shaker would settle it.",
  });
  const headline = ratio(
    "shake-ratio",
    "Shake along the road, fluid gone over sound, at the worst speed",
    curves.ratio,
    band.ratio,
    `leaked over sound, each draw at its own worst speed; ${CHAIN}`,
  );
  const felt =
    facts.felt === null
      ? null
      : ratio(
          "shake-felt",
          `The same at ${kmh(facts.felt).toFixed(0)} km/h, where it is felt`,
          (curves.leaked[facts.felt] as number) / (curves.sound[facts.felt] as number),
          band.ratios[facts.felt] as Spread,
          `leaked over sound at that speed; ${CHAIN}`,
        );
  const frequency = angularAt(model, speed) / (2 * Math.PI);
  const loss = (state: FluidState): Figure =>
    figure(
      `loss-${state}`,
      `Loss angle at that frequency, ${state === "leaked" ? "fluid gone" : "sound"}`,
      "deg",
      computeDynamicStiffness(model.bush, state, frequency).lossAngle,
      band.bush[state].lossAngle[FREQUENCIES.indexOf(Math.round(frequency))] ?? null,
      "loss angle atan2(Im K, Re K) of the bush alone at that frequency",
      degreesFromRadians(1),
    );
  const mm = mmFromMetres(variation);
  return {
    headline,
    felt,
    all: [
      headline,
      ...(felt === null ? [] : [felt]),
      figure(
        "shake-speed",
        "Speed at which it shakes most without the fluid",
        "km/h",
        kmPerHourFromMetresPerSecond(speed),
        { low: kmh(band.worst.low), high: kmh(band.worst.high), sd: band.worst.sd * (kmh(1) - kmh(0)) },
        `largest of the curve from ${kmh(0).toFixed(0)} to ${kmh(SPEEDS.length - 1).toFixed(0)} km/h; ${CHAIN}`,
      ),
      figure(
        "shake-frequency",
        "That is, once per turn of the wheel",
        "Hz",
        frequency,
        null,
        "speed over circumference",
      ),
      figure(
        "shake-leaked",
        "Shake along the road, fluid gone, to either side",
        "mm",
        curves.leaked[curves.worst] as number,
        band.leakedAtWorst,
        CHAIN,
        mm,
      ),
      figure(
        "shake-sound",
        "Shake along the road, sound, to either side",
        "mm",
        curves.sound[curves.worst] as number,
        band.soundAtWorst,
        CHAIN,
        mm,
      ),
      loss("leaked"),
      loss("sound"),
      figure(
        "force",
        "Force along the road from the uneven disc, to either side",
        "N",
        computeShakeForce(model, variation),
        null,
        "torque 2 mu k_c (p/2) r over rolling radius",
      ),
      figure(
        "static",
        "Give under a steady push, fluid gone over sound",
        "times",
        1,
        null,
        "K at w = 0 is k_r (1 + i eta) with the fluid and without it",
      ),
    ],
  };
}

function inputsOf({ model, assembly, position, band, variation }: ShakeFacts): Figure["inputs"] {
  const joint = assembly.links.find(({ name }) => name === position.joint?.link)?.innerJoint;
  const fluid = joint?.fluid;
  const origin = fluid ? `${originWords[fluid.origin] ?? fluid.origin}, ±${percent(2 * fluid.sdShare)} % each` : "";
  const perMm = (rate: number): string => formatNumber(perMmFromNewtonsPerMetre(rate), 0);
  const { bush, disc } = model;
  return [
    {
      label: "Thickness variation of the disc",
      value: `${formatNumber(mmFromMetres(variation), 3)} mm peak to peak, once per turn; the most a new disc may have (disc-thickness-variation)`,
    },
    {
      label: "Friction",
      value: `${formatNumber(disc.friction, 2)} ±${percent(2 * WHEEL_SPREAD.friction)} %, from memory`,
    },
    {
      label: "Clamp force per thickness",
      value: `${formatNumber(disc.caliper / 1e6, 0)} kN/mm ±${percent(2 * WHEEL_SPREAD.caliper)} % (caliper-rate)`,
    },
    {
      label: "Effective radius of the disc",
      value: `${formatNumber(mmFromMetres(disc.effectiveRadius), 0)} mm, common practice`,
    },
    {
      label: "Rolling circumference",
      value: `${formatNumber(mmFromMetres(model.circumference), 0)} mm, from the tyre on file`,
    },
    {
      label: "Mass that moves along the road",
      value: `${formatNumber(model.mass, 0)} kg ±${percent(2 * WHEEL_SPREAD.mass)} %, unsprung mass on file`,
    },
    {
      label: `${position.label}, across`,
      value: `${perMm(bush.rubber)} N/mm ±${percent(2 * (joint?.rateSdShare ?? 0))} %`,
    },
    { label: "Rubber: loss factor", value: `${formatNumber(bush.lossFactor, 2)}, ${origin}` },
    {
      label: "Fluid: rate, inertia, damping",
      value: `${perMm(bush.volume)} N/mm, ${formatNumber(bush.fluidInertia, 0)} kg, ${formatNumber(bush.fluidDamping / 1000, 1)} N s/mm; ${origin}`,
    },
    {
      label: "Fore-aft rate at the wheel centre",
      value: `${perMm(1 / model.foreAft.centreByOwn)} N/mm, from the balance of the corner`,
    },
    { label: "Hard points", value: `${assembly.points.length}, each within its own ±` },
    { label: "Draws", value: `${band.draws}, fixed seed` },
  ];
}
