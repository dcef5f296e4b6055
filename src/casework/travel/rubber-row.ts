import { formatNumber } from "../fault/format-figure.ts";
import { originWords } from "../fault/phrases.ts";
import type { CurveQuantity, FaultEffect } from "../fault-effect.ts";
import type { RubberRow, TravelChange } from "./travel-sheet.ts";

/** Heights are told apart no closer than this, metres. */
const SAME_HEIGHT = 1e-6;

/**
 * What a torn or firmer rubber changes against the sound corner, as its curves have it: at ride height and so far (metres)
 * up and down, or at the end of the curve where that comes first. At the travel asked for it is the figure of the effect.
 */
export function rubberRow(words: string, effect: FaultEffect, saidAt: number): RubberRow {
  const { question, rises, tornShare } = effect;
  const [first, last] = [rises[0] ?? 0, rises.at(-1) ?? 0];
  const asked = question.condition.contactRise;
  const travels = [Math.max(first, -saidAt), 0, Math.min(last, saidAt)];
  const said = travels.some((travel) => Math.abs(travel - asked) < SAME_HEIGHT) ? travels : [...travels, asked];
  const ordered = [...new Set(said)].sort((a, b) => a - b);
  const changes = (key: "toe" | "camber"): readonly TravelChange[] =>
    ordered.flatMap((travel) => figureAt(effect, key, travel) ?? curveAt(effect, `${key}-change`, travel) ?? []);
  return {
    words,
    state: question.fault.kind === "torn" ? "torn" : "firmer",
    means:
      tornShare &&
      `${words.charAt(0).toUpperCase()}${words.slice(1)} is taken at ${percent(tornShare.low)} to ${percent(tornShare.high)} % of its sound rate (${originWords[tornShare.origin] ?? tornShare.origin}).`,
    toe: changes("toe"),
    camber: changes("camber"),
  };
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
