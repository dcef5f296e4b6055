import { mmFromMetres } from "#quantity";
import type { FaultEffect } from "../fault-effect.ts";
import { csvCell } from "./csv-cell.ts";
import type { TravelPlot, TravelSheetQuestion } from "./travel-sheet.ts";

/** A millionth of a degree or millimetre is far below every band; what follows is the noise of the arithmetic. */
const DECIMALS = 6;
const rounded = (value: number): number => Number(value.toFixed(DECIMALS));

/** The lines of one figure. */
interface CsvPlot extends Pick<TravelPlot, "unit"> {
  readonly figure: TravelPlot["figure"] | `${"toe" | "camber"} less sound`;
  readonly lines: readonly Pick<TravelPlot["lines"][number], "words" | "rises" | "values" | "low" | "high">[];
}

/**
 * The lines of a travel sheet as comma-separated values (RFC 4180): one row per line and travel with the corner, forces and
 * rack it was computed for, values to a millionth; `low` and `high` hold 95 %, empty where no band is computed.
 */
export function formatTravelCsv(
  { plots }: { readonly plots: readonly CsvPlot[] },
  { family, corner, condition }: Pick<TravelSheetQuestion, "family" | "corner" | "condition">,
): string {
  const asked = [
    family.name,
    corner,
    condition.braking,
    condition.lateral,
    condition.drive,
    rounded(mmFromMetres(condition.rack)),
  ];
  const rows = plots.flatMap(({ figure, unit, lines }) =>
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

const figureOf = (quantity: FaultEffect["curves"][number]["quantity"]): CsvPlot["figure"] =>
  quantity === "toe-change" ? "toe less sound" : quantity === "camber-change" ? "camber less sound" : quantity;

/** The curves of one fault in the same columns: toe and camber, sound and with the fault, and what it changes in them. */
export const formatEffectCsv = (
  family: TravelSheetQuestion["family"],
  { question, rises, curves }: FaultEffect,
): string =>
  formatTravelCsv(
    {
      plots: curves.map(({ quantity, unit, lines }) => ({
        figure: figureOf(quantity),
        unit,
        lines: lines.map((line) => ({ ...line, words: line.state, rises })),
      })),
    },
    { family, corner: question.corner, condition: question.condition },
  );
