import { mmFromMetres } from "#quantity";
import type { BodiesAsked, BodiesSheet } from "../bodies.ts";
import { csvCell } from "../travel/csv-cell.ts";

/** Digits of a travel, mm: it is a place asked for, so what rounding added is taken off again. */
const TRAVEL_DECIMALS = 6;

/**
 * The lines of a layout from a file as comma-separated values (RFC 4180): one row per line and travel with the forces it was
 * computed for, values with full digits; `low` and `high` hold 95 %.
 */
export function formatBodiesCsv(sheet: BodiesSheet, { file, condition }: BodiesAsked): string {
  const asked = [file.layout.name, condition.braking, condition.lateral, condition.drive];
  const rows = sheet.plots.flatMap(({ figure, unit, lines }) =>
    lines.flatMap(({ words, rises, values, low, high }) =>
      rises.map((rise, i) => {
        const travel = Number(mmFromMetres(rise).toFixed(TRAVEL_DECIMALS));
        return [...asked, words, figure, unit, travel, values[i], low[i], high[i]];
      }),
    ),
  );
  const head = [
    "layout",
    "braking_n",
    "lateral_n",
    "drive_n",
    "line",
    "figure",
    "unit",
    "travel_mm",
    "value",
    "low",
    "high",
  ];
  return `${[head, ...rows].map((row) => row.map((cell) => csvCell(cell ?? "")).join(",")).join("\r\n")}\r\n`;
}
