import type { Figure } from "../fault-effect.ts";

const MINUS = "−";

/** Decimals that leave one or two digits of the doubled standard uncertainty; at most `most`. */
export function decimalsFor(u: number, most: number): number {
  if (!(u > 0)) return most;
  return Math.max(0, Math.min(most, Math.ceil(-Math.log10(2 * u) + 0.3)));
}

/** A number with a typographic minus and a fixed number of decimals; never "-0". */
export function formatNumber(value: number, decimals: number): string {
  const text = Math.abs(value).toFixed(decimals);
  return value < 0 && Number(text) !== 0 ? `${MINUS}${text}` : text;
}

/** Unit as it is written behind a number. */
export function unitSign(unit: Figure["unit"]): string {
  return { deg: "°", mm: " mm", N: " N", "deg per m": "°/m", percent: " %" }[unit];
}

/** Decimals a figure is shown with: from its uncertainty, angles to 0.01 at most, forces to whole newtons. */
export function decimalsOf(figure: Pick<Figure, "u" | "unit">): number {
  const most = { deg: 2, mm: 1, N: 0, "deg per m": 1, percent: 0 }[figure.unit];
  return decimalsFor(figure.u, most);
}

/** A figure's value with its unit, as every page and paper writes it. */
export function formatFigure(figure: Figure): string {
  return `${formatNumber(figure.value, decimalsOf(figure))}${unitSign(figure.unit)}`;
}

/** Plus or minus: twice the standard uncertainty, rounded up so that it is never shown smaller than it is. */
export function formatPlusMinus(figure: Figure): string {
  const decimals = decimalsOf(figure);
  const scale = 10 ** decimals;
  const shown = Math.ceil(2 * figure.u * scale - 1e-9) / scale;
  return `±${formatNumber(shown, decimals)}${unitSign(figure.unit)}`;
}

/** The range of a fault that is itself a range: "0.13 to 0.33°". */
export function formatRange(figure: Figure): string | null {
  if (!figure.range) return null;
  const decimals = decimalsOf(figure);
  const [low, high] = figure.range;
  return `${formatNumber(low, decimals)} to ${formatNumber(high, decimals)}${unitSign(figure.unit)}`;
}
