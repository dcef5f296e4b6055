import { formatBetween, formatBound } from "../fault/format-figure.ts";
import type { TravelChange } from "./travel-sheet.ts";

const DECIMALS = 2;
const plus = (value: number): string => (value > 0 ? "+" : "");

/** A change and the ends of its band, degrees with their signs; no end is shown as nought that is not, no value outside of them. */
export const formatChange = ({ value, band: [low, high] }: TravelChange): Record<"value" | "low" | "high", string> => ({
  value: `${plus(value)}${formatBetween(value, [low, high], DECIMALS)}°`,
  low: `${plus(low)}${formatBound(low, DECIMALS, "low")}°`,
  high: `${plus(high)}${formatBound(high, DECIMALS, "high")}°`,
});

/** The size of a change whose sign is sure, and between what it lies: "0.32° ... (0.14 to 0.69°)" without the direction. */
export const changeSizes = ({ value, band }: TravelChange): { readonly size: string; readonly between: string } => {
  const [low, high] = band.map(Math.abs).toSorted((a, b) => a - b) as [number, number];
  return {
    size: `${formatBetween(Math.abs(value), [low, high], DECIMALS)}°`,
    between: `${formatBound(low, DECIMALS, "low")} to ${formatBound(high, DECIMALS, "high")}°`,
  };
};
