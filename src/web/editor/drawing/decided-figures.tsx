import { decimalsOf, formatNumber } from "#casework";
import type { AxleName } from "../../car.ts";
import { MarginSection } from "../../shell/margin-section.tsx";
import { SourceLink } from "../../shell/source-link.tsx";
import { pathOfCoordinate, pointRows } from "../model/hard-points.ts";
import { formatSheetPath, isAtOrIn } from "../model/sheet-path.ts";
import type { DecidedFigure } from "./travel-effect.ts";

interface DecidedFiguresProps {
  readonly figures: readonly DecidedFigure[];
  readonly sheet: unknown;
  readonly axle: AxleName;
  readonly onGo: (path: string) => void;
}

type Coordinate = DecidedFigure["coordinates"][number];

const UNITS: Readonly<Record<string, string>> = { deg: "°", "deg per m": "°/m", mm: " mm" };

const signed = (value: number, unit: string, decimals: number): string =>
  `${value > 0 ? "+" : ""}${formatNumber(value, decimals)}${UNITS[unit] ?? ` ${unit}`}`;

/** "−0.21° ±0.05" */
const standing = ({ value, sd, unit }: DecidedFigure): string => {
  const decimals = decimalsOf({ u: sd, unit: unit === "mm" ? "mm" : "deg", band: null });
  return `${signed(value, unit, decimals)} ±${formatNumber(2 * sd, decimals)}`;
};

const namesOf = (figures: readonly DecidedFigure[]): string =>
  figures.map(({ label }) => label.charAt(0).toLowerCase() + label.slice(1)).join("; ");

/** What an edit did to what can be printed; null where it did nothing. */
const changeWords = (figures: readonly DecidedFigure[]): string | null => {
  const become = figures.filter(({ printable, wasPrintable }) => printable && wasPrintable === false);
  const lost = figures.filter(({ printable, wasPrintable }) => !printable && wasPrintable === true);
  const said = [
    ...(become.length === 0 ? [] : [`Has become printable: ${namesOf(become)}.`]),
    ...(lost.length === 0 ? [] : [`No longer printable: ${namesOf(lost)}.`]),
  ];
  return said.length === 0 ? null : said.join(" ");
};

/** "Toe link, inner end, height" as the fields name it. */
const coordinateName = (sheet: unknown, axle: AxleName, path: string, { axisWords }: Coordinate): string => {
  const row = pointRows(sheet, axle).find((one) => isAtOrIn(path, formatSheetPath(one.path)));
  return row === undefined ? axisWords : `${row.name}, ${axisWords}`;
};

/**
 * The figures the points of an axle decide: which can be printed, what the edit did to that, and for each the coordinates
 * that do most to it, leading to their fields.
 */
export const DecidedFigures = ({ figures, sheet, axle, onGo }: DecidedFiguresProps) => {
  const printable = figures.filter((figure) => figure.printable).length;
  const change = changeWords(figures);
  return (
    <MarginSection title="What each figure hangs on">
      <p className="note">
        {printable} of {figures.length} figures printable. {change}
      </p>
      {figures.map((figure) => (
        <details key={figure.key} className="figure-line">
          <summary>
            <span>{figure.label}</span>
            {figure.printable ? <strong>{standing(figure)}</strong> : <span className="label">not printable</span>}
          </summary>
          {figure.settle === null ? null : <p className="note">Its sign is not sure. {figure.settle}</p>}
          <ul className="put-right">
            {figure.coordinates.map((coordinate) => {
              const path = pathOfCoordinate(sheet, axle, coordinate.point, coordinate.axis);
              if (path === null) return null;
              const place = formatSheetPath(path);
              return (
                <li key={place}>
                  <button type="button" className="link" onClick={() => onGo(place)}>
                    {coordinateName(sheet, axle, place, coordinate)}
                  </button>
                  <span className="label">
                    {formatNumber(100 * coordinate.share, 0)} % of what is not known of it;{" "}
                    {signed(coordinate.perMm, figure.unit, figure.unit === "mm" ? 2 : 3)} for each mm
                  </span>
                </li>
              );
            })}
          </ul>
        </details>
      ))}
      <p className="note">
        Rigid links, left wheel, every point with the standard deviation the sheet says; ± holds 95 %. Each figure by
        its exact derivative with every coordinate, squares added. Source: <SourceLink source="forward-derivatives" />
      </p>
    </MarginSection>
  );
};
