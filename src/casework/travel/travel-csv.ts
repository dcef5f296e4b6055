import { mmFromMetres } from "#quantity";
import { csvCell } from "./csv-cell.ts";
import type { TravelSheet, TravelSheetQuestion } from "./travel-sheet.ts";

/** A millionth of a degree or millimetre is far below every band; what follows is the noise of the arithmetic. */
const DECIMALS = 6;
const rounded = (value: number): number => Number(value.toFixed(DECIMALS));

/**
 * The lines of a travel sheet as comma-separated values (RFC 4180): one row per line and travel with the corner, forces and
 * rack it was computed for, values to a millionth; `low` and `high` hold 95 %, empty where no band is computed.
 */
export function formatTravelCsv(sheet: TravelSheet, { family, corner, condition }: TravelSheetQuestion): string {
  const asked = [
    family.name,
    corner,
    condition.braking,
    condition.lateral,
    condition.drive,
    rounded(mmFromMetres(condition.rack)),
  ];
  const rows = sheet.plots.flatMap(({ figure, unit, lines }) =>
    lines.flatMap(({ words, rises, values, low, high }) =>
      rises.map((rise, i) => {
        const [value, from, to] = [values[i], low[i], high[i]].map((v) => (v === undefined ? "" : rounded(v)));
        const banded = from !== to;
        const travel = rounded(mmFromMetres(rise));
        return [...asked, words, figure, unit, travel, value, banded ? from : "", banded ? to : ""];
      }),
    ),
  );
  const head = [
    ...["car_line", "corner", "braking_n", "lateral_n", "drive_n", "rack_mm"],
    ...["line", "figure", "unit", "travel_mm", "value", "low", "high"],
  ];
  return `${[head, ...rows].map((row) => row.map((cell) => csvCell(cell ?? "")).join(",")).join("\r\n")}\r\n`;
}
