import type { ReactNode } from "react";
import { formatNumber, type TravelPlot, type TravelSheet, travelFigureForms } from "#casework";
import { mmFromMetres } from "#quantity";
import { SourceWords } from "../reference/source-words.tsx";

const DECIMALS = { deg: 2, mm: 1, kN: 2, "": 3 } as const;

interface ValueCellProps {
  readonly unit: TravelPlot["unit"];
  readonly value: number | undefined;
  readonly low: number | undefined;
  readonly high: number | undefined;
}

/** A value with its band below it; empty where the line has none at this height. */
const ValueCell = ({ unit, value, low, high }: ValueCellProps) => {
  if (value === undefined) return <td />;
  const words = (v: number): string => formatNumber(v, DECIMALS[unit]);
  const banded = low !== undefined && high !== undefined && low !== high;
  return (
    <td>
      {words(value)}
      {banded ? (
        <>
          <span className="note">{words(low)} to</span>
          <span className="note">{words(high)}</span>
        </>
      ) : null}
    </td>
  );
};

/** Every travel one of the lines has a value at, metres, falling: bump stands on top as in the drawing. */
const heightsOf = ({ lines }: TravelPlot): readonly number[] =>
  [...new Set(lines.flatMap(({ rises }) => rises.map((rise) => Math.round(rise * 1e6))))]
    .sort((a, b) => b - a)
    .map((micro) => micro / 1e6);

/** How a figure of a corner is computed and by which source. */
const FigureBasis = ({ plot }: { readonly plot: TravelPlot }) => {
  const rigid = travelFigureForms.find(({ figure }) => figure === plot.figure)?.rigid !== undefined;
  return (
    <p className="note">
      {rigid
        ? "Relation: the rigid linkage, rack as set. Source: "
        : "Relation: links with rubber ends in balance at the asked force, contact height held; band 95 % from exact derivatives by every point and rate. Source: "}
      <SourceWords
        line={
          rigid
            ? "newton-continuation; docs/method/linkage.md"
            : "two-force-links, forward-derivatives; docs/method/linkage.md"
        }
      />
    </p>
  );
};

interface FigureTablesProps {
  readonly sheet: Pick<TravelSheet, "plots">;
  /** Said under each table; absent: how a figure of a corner is computed. */
  readonly basis?: ReactNode;
}

/** Every value of the chosen figures; each table opens. */
export const FigureTables = ({ sheet, basis }: FigureTablesProps) =>
  sheet.plots.map((plot) =>
    plot.lines.length === 0 ? null : (
      <details key={plot.figure} className="opens">
        <summary>Every value: {plot.title}</summary>
        <table className="travel-table">
          <caption className="unseen">{plot.title}</caption>
          <thead>
            <tr>
              <th scope="col">travel, mm</th>
              {plot.lines.map(({ words }) => (
                <th key={words} scope="col">
                  {words}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {heightsOf(plot).map((height) => (
              <tr key={height}>
                <th scope="row">{formatNumber(mmFromMetres(height), 0)}</th>
                {plot.lines.map(({ words, rises, values, low, high }) => {
                  const i = rises.findIndex((rise) => Math.abs(rise - height) < 1e-6);
                  return <ValueCell key={words} unit={plot.unit} value={values[i]} low={low[i]} high={high[i]} />;
                })}
              </tr>
            ))}
          </tbody>
        </table>
        {basis ?? <FigureBasis plot={plot} />}
      </details>
    ),
  );
