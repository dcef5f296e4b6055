import { subtractJets } from "#numeric";
import { degreesFromRadians } from "#quantity";
import { bandOfAngles } from "../fault/change-band.ts";
import { firmnessOf, howFirmWords } from "../fault/firmer-rubber.ts";
import { formatNumber } from "../fault/format-figure.ts";
import { originWords } from "../fault/phrases.ts";
import { isSignSure } from "../fault/settle.ts";
import type { CurveQuantity, FaultEffect, FirmerRubber } from "../fault-effect.ts";
import type { CornerWalk } from "./corner-walk.ts";
import { capital } from "./row-words.ts";
import type { RubberRow, TravelChange } from "./travel-sheet.ts";

/** Heights are told apart no closer than this, metres. */
const SAME_HEIGHT = 1e-6;

/** Travels at which a change is said, metres, rising: ride height, so far up and down or the ends, and the one asked for. */
function saidTravels(rises: readonly number[], asked: number, saidAt: number): readonly number[] {
  const [first, last] = [rises[0] ?? 0, rises.at(-1) ?? 0];
  const travels = [Math.max(first, -saidAt), 0, Math.min(last, saidAt)];
  const said = travels.some((travel) => Math.abs(travel - asked) < SAME_HEIGHT) ? travels : [...travels, asked];
  return [...new Set(said)].sort((a, b) => a - b);
}

/**
 * What a torn, loose or firmer place changes against the sound corner, as its curves have it: at ride height and so far (metres)
 * up and down, or at the end of the curve where that comes first. At the travel asked for it is the figure of the effect.
 */
export function rubberRow(words: string, effect: FaultEffect, saidAt: number): RubberRow {
  const { question, rises } = effect;
  const travels = saidTravels(rises, question.condition.contactRise, saidAt);
  const changes = (key: "toe" | "camber"): readonly TravelChange[] =>
    travels.flatMap((travel) => figureAt(effect, key, travel) ?? curveAt(effect, `${key}-change`, travel) ?? []);
  return {
    words,
    state: question.fault.kind,
    means: meansOf(words, effect),
    toe: changes("toe"),
    camber: changes("camber"),
  };
}

function meansOf(words: string, { question, tornShare, firmness }: FaultEffect): string | null {
  if (question.fault.kind === "firmer") return howFirmWords(question.fault, firmness);
  if (question.fault.kind === "loose")
    return `${capital(words)} is drawn at rest on the side of its healthy preload${question.fault.assumed ? "; its play is assumed" : ""}.`;
  return (
    tornShare &&
    `${capital(words)} is taken at ${percent(tornShare.low)} to ${percent(tornShare.high)} % of its sound rate (${originWords[tornShare.origin] ?? tornShare.origin}).`
  );
}

/** A corner with every rubber firmer, and the sound one, walked under one condition. */
export interface FirmWalks {
  readonly firmer: FirmerRubber;
  readonly sound: CornerWalk;
  readonly walk: CornerWalk;
  /** At both ends of how firm it may be; none where that is no range. */
  readonly ends: readonly CornerWalk[];
}

/** The same of a corner with every rubber firmer: both ends of how firm it may be are in the band, and share its sign. */
export function everyRubberRow(words: string, walks: FirmWalks, asked: number, saidAt: number): RubberRow {
  const travels = saidTravels(
    walks.walk.points.map(({ rise }) => rise),
    asked,
    saidAt,
  );
  const changes = (key: "toe" | "camber"): readonly TravelChange[] =>
    travels.flatMap((travel) => walkedChange(walks, key, travel) ?? []);
  const { firmer } = walks;
  const means = howFirmWords(firmer, firmnessOf(firmer, null));
  return { words, state: "firmer", means, toe: changes("toe"), camber: changes("camber") };
}

function walkedChange({ sound, walk, ends }: FirmWalks, key: "toe" | "camber", travel: number): TravelChange | null {
  const from = sound.solveAt(travel);
  const all = [walk, ...ends].flatMap((one) => {
    const at = from && one.solveAt(travel);
    if (!from || !at) return [];
    const jet = subtractJets(at[key], from[key]);
    const sd = degreesFromRadians(one.state.band.jets.deviation(jet));
    return [{ value: degreesFromRadians(jet[0] as number), sd }];
  });
  const [middle] = all;
  if (!middle || all.length <= ends.length) return null;
  const sure = all.every(({ value, sd }) => isSignSure(value, sd) && value * middle.value > 0);
  return { travel, value: middle.value, band: bandOfAngles(all), sure };
}

const percent = (share: number): string => formatNumber(100 * share, 0);

function figureAt(effect: FaultEffect, key: "toe" | "camber", travel: number): TravelChange | null {
  if (Math.abs(travel - effect.question.condition.contactRise) > SAME_HEIGHT) return null;
  const figure = effect.figures.find((f) => f.key === `${key}-change`);
  return figure?.band ? { travel, value: figure.value, band: figure.band, sure: figure.signSure } : null;
}

/** The bound of a change lies beyond nought exactly where its sign is sure. */
function curveAt({ curves, rises }: FaultEffect, quantity: CurveQuantity, travel: number): TravelChange | null {
  const i = rises.findIndex((rise) => Math.abs(rise - travel) < SAME_HEIGHT);
  const line = curves.find((curve) => curve.quantity === quantity)?.lines[0];
  const [value, low, high] = [line?.values[i], line?.low[i], line?.high[i]];
  if (value === undefined || low === undefined || high === undefined) return null;
  return { travel, value, band: [low, high], sure: low * high > 0 };
}
