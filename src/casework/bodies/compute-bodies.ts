import { type BranchEnd, LayoutSweep } from "#engines/linkage";
import type { Finding } from "#numeric";
import { mmFromMetres } from "#quantity";
import type { BodiesAsked, BodiesSheet, RubberPlace } from "../bodies.ts";
import { bandOfAngles } from "../fault/change-band.ts";
import { formatFigure, formatNumber } from "../fault/format-figure.ts";
import { conditionWords, inOrOut } from "../fault/phrases.ts";
import type { Figure } from "../fault-effect.ts";
import type { TravelLine, TravelPlot } from "../travel/travel-sheet.ts";
import { angleOf, changeFigure } from "./layout-change.ts";
import { type LayoutBand, LayoutStates, tornBy } from "./layout-states.ts";
import { placeBodies } from "./place-bodies.ts";

/** What a torn rubber still has of its rates: middle, then both ends (invented, as of the templates). */
const TORN_SHARES = [0.275, 0.15, 0.4] as const;
const FURTHEST = 0.08;
const STEP = 0.01;
/** Changes over travel are said at so much bump and droop, metres. */
const SAID_AT = 0.05;
const REACH = 0.2;

/** In a sentence: "the joint arm front", "the first end of the toe link" */
const placeWords = ({ part, end }: RubberPlace): string => {
  const words = part.replaceAll("-", " ");
  return end === null ? `the joint ${words}` : `the ${end === "from" ? "first" : "second"} end of the ${words}`;
};

/** In a list: "arm front", "toe link, first end" */
export const rubberWords = ({ part, end }: RubberPlace): string => {
  const words = part.replaceAll("-", " ");
  return end === null ? words : `${words}, ${end === "from" ? "first" : "second"} end`;
};

/**
 * A suspension of any number of bodies over its travel: toe and camber with their bands, sound and with one rubber torn, and
 * where every part stands at the asked travel. Findings where its joints cannot carry the wheel, or no balance is found.
 */
export function computeBodies(
  asked: BodiesAsked,
): { readonly sheet: BodiesSheet } | { readonly findings: readonly Finding[] } {
  const { file, torn, condition } = asked;
  const sound = new LayoutStates(file, []);
  if (!sound.balance.carries) return { findings: [cannotCarry] };
  const faulty = torn === null ? [] : TORN_SHARES.map((share) => new LayoutStates(file, [tornBy(torn, share)]));
  const here = sound.at(condition, condition.contactRise);
  if (here === null) return { findings: [noBalance(condition.contactRise)] };
  const there = faulty.flatMap((states) => states.at(condition, condition.contactRise) ?? []);
  const sweep = new LayoutSweep(file.layout);
  const ends = sweep.findEnds(REACH);
  const low = Math.max(-FURTHEST, (ends.low?.at ?? -REACH) + STEP);
  const high = Math.min(FURTHEST, (ends.high?.at ?? REACH) - STEP);
  const count = Math.max(2, Math.round((high - low) / STEP));
  const rises = Array.from({ length: count + 1 }, (_, i) => low + ((high - low) * i) / count);
  const walks = [sound, ...faulty].map((states) => rises.map((rise) => states.at(condition, rise)));
  const figures = figuresOf({ asked, sound, here, there });
  const [middle] = there;
  return {
    sheet: {
      torn,
      plots: (["toe", "camber"] as const).map((key) => plotOf(key, asked, sound, rises, walks)),
      placed: placeBodies(sound.linkage, here.state),
      tornPlaced: middle && torn !== null ? placeBodies(sound.linkage, middle.state) : null,
      rung: "measured",
      invented: /\binvented\b/i.test(file.note),
      parts: [],
      figures,
      sentence: sentenceOf(asked, figures),
      binds: bindWords(ends.low, ends.high),
      howSure: `Bands hold 95 %: every point ±${file.sd.map((sd) => formatNumber(2 * mmFromMetres(sd), 1)).join(", ")} mm along, across and in height, rates as the file says.${torn === null ? "" : ` Torn means ${formatNumber(100 * TORN_SHARES[1], 0)} to ${formatNumber(100 * TORN_SHARES[2], 0)} % of the sound rate (invented).`}`,
      notComputed:
        "Play, what rubber resists against turning, forces while the car hangs, and how to hold it: not computed for a layout from a file.",
      computedSo:
        "All bodies in balance on rubber at the asked forces, the contact height held; bodies are rigid. No code knows this layout: it is read from the file.",
    },
  };
}

interface FiguresAsked {
  readonly asked: BodiesAsked;
  readonly sound: LayoutStates;
  readonly here: LayoutBand;
  readonly there: readonly LayoutBand[];
}

/** What the torn rubber changes at the asked travel, then what travel changes in the sound state. */
function figuresOf({ asked: { torn, condition }, sound, here, there }: FiguresAsked): readonly Figure[] {
  const mm = (metres: number): string => `${formatNumber(mmFromMetres(Math.abs(metres)), 0)} mm`;
  const inputs = [
    { label: "Forces", value: conditionWords(condition) },
    { label: "Travel", value: `${condition.contactRise < 0 ? "−" : ""}${mm(condition.contactRise)}` },
  ];
  const [first, ...rest] = there;
  const changes =
    torn === null || first === undefined
      ? []
      : (["toe", "camber"] as const).map((key) =>
          changeFigure({
            states: sound,
            key,
            label: `${key === "toe" ? "Toe" : "Camber"}, torn less sound`,
            bands: [first, ...rest],
            less: here,
            inputs,
          }),
        );
  const rest0 = sound.at(condition, 0);
  const over = [SAID_AT, -SAID_AT].flatMap((travel) => {
    const band = sound.at(condition, travel);
    if (band === null || rest0 === null) return [];
    return (["toe", "camber"] as const).map((key) =>
      changeFigure({
        states: sound,
        key,
        label: `${key === "toe" ? "Toe" : "Camber"} from ride height, ${mm(travel)} of ${travel > 0 ? "bump" : "droop"}`,
        bands: [band],
        less: rest0,
        inputs,
      }),
    );
  });
  return [...changes, ...over];
}

function plotOf(
  key: "toe" | "camber",
  { torn }: BodiesAsked,
  sound: LayoutStates,
  rises: readonly number[],
  walks: readonly (readonly (LayoutBand | null)[])[],
): TravelPlot {
  const line = (words: string, over: readonly (readonly (LayoutBand | null)[])[], isTorn: boolean): TravelLine => {
    const points = rises.flatMap((rise, i) => {
      const bands = over.flatMap((walk) => walk[i] ?? []);
      if (bands.length < over.length) return [];
      const angles = bands.map((band) => angleOf(sound, key, band, null));
      const [low, high] = bandOfAngles(angles);
      return [{ rise, value: angles[0]?.value ?? 0, low, high }];
    });
    return {
      state: isTorn ? "torn" : "sound",
      words,
      subject: isTorn ? "rubber" : "sound",
      rises: points.map((p) => p.rise),
      values: points.map((p) => p.value),
      low: points.map((p) => p.low),
      high: points.map((p) => p.high),
    };
  };
  const [first = [], ...others] = walks;
  return {
    figure: key,
    title: key === "toe" ? "toe, °, in is +" : "camber, °",
    unit: "deg",
    lines: [
      line("sound", [first], false),
      ...(torn === null ? [] : [line(`torn: ${rubberWords(torn)}`, others, true)]),
    ],
    leftOut: [],
  };
}

function sentenceOf({ torn, condition }: BodiesAsked, figures: readonly Figure[]): string {
  const [first] = figures;
  if (first === undefined) return "No figure could be computed at this travel.";
  const size = formatFigure({ ...first, value: Math.abs(first.value) });
  if (torn === null) {
    return first.signSure
      ? `${conditionWords(condition)} the wheel turns ${inOrOut(first.value)} ${size} over the first ${formatNumber(mmFromMetres(SAID_AT), 0)} mm of bump.`
      : `${conditionWords(condition)} it is not sure which way the wheel turns over its travel.`;
  }
  return first.signSure
    ? `${conditionWords(condition)} the wheel turns ${inOrOut(first.value)} ${size} further with ${placeWords(torn)} torn.`
    : `${conditionWords(condition)} it is not sure which way the wheel turns with ${placeWords(torn)} torn.`;
}

function bindWords(low: BranchEnd | null, high: BranchEnd | null): string {
  const said = (end: BranchEnd, way: string): string =>
    `at ${formatNumber(mmFromMetres(Math.abs(end.at)), 0)} mm of ${way} it binds in ${end.joints
      .map(({ joint }) => joint.replaceAll("-", " "))
      .join(", ")}`;
  const words = [...(low ? [said(low, "droop")] : []), ...(high ? [said(high, "bump")] : [])];
  return words.length === 0
    ? `It binds nowhere within ${formatNumber(mmFromMetres(REACH), 0)} mm.`
    : `${words.join("; ").charAt(0).toUpperCase()}${words.join("; ").slice(1)}.`;
}

const cannotCarry: Finding = {
  code: "cannot-carry",
  path: "layout.spring",
  got: "a spring that does not carry the wheel",
  needed: "a spring whose length changes when the wheel rises",
  hint: "Look at the spring's points.",
};

const noBalance = (rise: number): Finding => ({
  code: "no-equilibrium",
  path: "condition.contactRise",
  got: `${formatNumber(mmFromMetres(rise), 0)} mm`,
  needed: "a travel and forces at which the bodies find a balance",
  hint: "Move it less, or pull less.",
});
