import type { Figure } from "../fault-effect.ts";

const MINUS = "−";

/** Decimals that leave one or two digits of the doubled standard uncertainty; at most `most`. */
export function decimalsFor(u: number, most: number): number {
  if (!(u > 0)) return most;
  return Math.max(0, Math.min(most, Math.ceil(-Math.log10(2 * u) + 0.3)));
}

/** Digits that outlast a change of unit; what follows them is the noise of binary fractions. */
const SURE_DIGITS = 12;

/** A size with so many decimals, halves away from nought by its decimal digits: 1.15 is 1.2, though its double lies below. */
function roundDecimal(size: number, decimals: number): string {
  if (!Number.isFinite(size)) return size.toFixed(decimals);
  const [digits = "0", exponent = "0"] = size.toExponential(SURE_DIGITS - 1).split("e");
  const whole = Math.round(Number(`${digits}e${Number(exponent) + decimals}`));
  return (whole / 10 ** decimals).toFixed(decimals);
}

/** Decimals a size was written with, past the noise of a change of unit; 0 for a whole number. */
export function writtenDecimals(value: number): number {
  const [digits = "", exponent = "0"] = Number(Math.abs(value).toPrecision(SURE_DIGITS)).toExponential().split("e");
  return Math.max(0, digits.replace(".", "").length - 1 - Number(exponent));
}

/** A number with a typographic minus and a fixed number of decimals, halves away from nought; never "-0". */
export function formatNumber(value: number, decimals: number): string {
  const text = roundDecimal(Math.abs(value), decimals);
  return value < 0 && Number(text) !== 0 ? `${MINUS}${text}` : text;
}

/** Unit as it is written behind a number. */
export function unitSign(unit: Figure["unit"]): string {
  return {
    deg: "°",
    mm: " mm",
    N: " N",
    "deg per m": "°/m",
    percent: " %",
    times: " times",
    "km/h": " km/h",
    Hz: " Hz",
  }[unit];
}

/** Most decimals of a unit: angles to 0.01, forces to whole newtons. */
const MOST_DECIMALS: Readonly<Record<Figure["unit"], number>> = {
  deg: 2,
  mm: 1,
  N: 0,
  "deg per m": 1,
  percent: 0,
  times: 1,
  "km/h": 0,
  Hz: 1,
};

/**
 * Decimals a figure and its band are shown with: from its uncertainty, and as many more as keep the bound of a band
 * that nears nought from being shown as nought.
 */
export function decimalsOf({ u, unit, band, decimals: own }: Pick<Figure, "u" | "unit" | "band" | "decimals">): number {
  const most = own ?? MOST_DECIMALS[unit];
  const near = band && band[0] * band[1] > 0 ? Math.min(Math.abs(band[0]), Math.abs(band[1])) : null;
  let decimals = decimalsFor(u, most);
  while (near !== null && decimals < most && Math.floor(near * 10 ** decimals) === 0) decimals++;
  return decimals;
}

/** A bound is never shown with more decimals than this. */
const MOST_BOUND_DECIMALS = 4;

/** A bound near nought keeps its first digit, so that it is not shown as nought. */
function boundDecimals(value: number, usual: number): number {
  if (value === 0 || Math.floor(Math.abs(value) * 10 ** usual) > 0) return usual;
  return Math.min(MOST_BOUND_DECIMALS, Math.max(usual, Math.ceil(-Math.log10(Math.abs(value)))));
}

/** A bound with its decimals, rounded away from the range it ends. */
function roundBound(value: number, decimals: number, side: "low" | "high"): number {
  const scaled = value * 10 ** decimals;
  return (side === "low" ? Math.floor(scaled + 1e-9) : Math.ceil(scaled - 1e-9)) / 10 ** decimals;
}

/** A bound with its usual decimals, rounded away from the range it ends, and with more where it would be shown as nought. */
export function formatBound(value: number, usual: number, side: "low" | "high"): string {
  const decimals = boundDecimals(value, usual);
  return formatNumber(roundBound(value, decimals, side), decimals);
}

/** A value with its usual decimals, and with as many more as keep it from being shown outside of its own bounds. */
export function formatBetween(value: number, [low, high]: readonly [number, number], usual: number): string {
  const lowest = Math.min(value, roundBound(low, boundDecimals(low, usual), "low"));
  const highest = Math.max(value, roundBound(high, boundDecimals(high, usual), "high"));
  const shown = (decimals: number) => Number(value.toFixed(decimals));
  let decimals = usual;
  while (decimals < MOST_BOUND_DECIMALS && (shown(decimals) < lowest || shown(decimals) > highest)) decimals++;
  return formatNumber(value, decimals);
}

/** A figure's value with its unit, as every page and paper writes it. */
export function formatFigure(figure: Figure): string {
  const { value, band, unit } = figure;
  const usual = decimalsOf(figure);
  return `${band ? formatBetween(value, band, usual) : formatNumber(value, usual)}${unitSign(unit)}`;
}

/** Two bounds with the figure's decimals, rounded away from each other: never a narrower range than it is. */
function formatBounds(figure: Figure, [low, high]: readonly [number, number]): string {
  const usual = decimalsOf(figure);
  const words = [formatBound(low, usual, "low"), formatBound(high, usual, "high")];
  return `${words.join(" to ")}${unitSign(figure.unit)}`;
}

/** Where a figure lies with 95 %, all that is uncertain in it: "0.07 to 0.52°"; null where no band was computed. */
export const formatBand = (figure: Figure): string | null => figure.band && formatBounds(figure, figure.band);

/** The same as sizes, smaller first, for a sentence that says the direction; null where the band has both signs. */
export function formatBandSizes(figure: Figure): string | null {
  if (!figure.band || figure.band[0] * figure.band[1] < 0) return null;
  const [a, b] = figure.band.map(Math.abs) as [number, number];
  return formatBounds(figure, [Math.min(a, b), Math.max(a, b)]);
}

/** What the range of the fault alone does: "0.13 to 0.33°"; null where the fault is no range. */
export const formatRange = (figure: Figure): string | null => figure.range && formatBounds(figure, figure.range);
