import { mmFromMetres } from "#quantity";
import { csvCell } from "./csv-cell.ts";
import type { TravelSheet } from "./travel-sheet.ts";

/**
 * The lines of a travel sheet as comma-separated values (RFC 4180): one row per line and travel, full precision, with the
 * unit in the column's own cell; `low` and `high` hold 95 %, empty where no band is computed.
 */
export function formatTravelCsv(sheet: TravelSheet): string {
  const rows = sheet.plots.flatMap(({ figure, unit, lines }) =>
    lines.flatMap(({ words, rises, values, low, high }) =>
      rises.map((rise, i) => {
        const [value, from, to] = [values[i], low[i], high[i]];
        const banded = from !== to;
        return [words, figure, unit, mmFromMetres(rise), value, banded ? from : "", banded ? to : ""];
      }),
    ),
  );
  const head = ["line", "figure", "unit", "travel_mm", "value", "low", "high"];
  return `${[head, ...rows].map((row) => row.map((cell) => csvCell(cell ?? "")).join(",")).join("\r\n")}\r\n`;
}
