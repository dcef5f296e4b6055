import { useState } from "react";
import type { AxleName } from "../../car.ts";
import type { FieldsContext } from "../fields/fields-context.ts";
import { pointRows } from "../model/hard-points.ts";
import { formatSheetPath, isAtOrIn } from "../model/sheet-path.ts";
import { AxleDefaults } from "./axle-defaults.tsx";
import { PointRow } from "./point-row.tsx";
import { walkPoints } from "./walk-points.ts";

const DEFAULTS = ["origin", "sd_mm"] as const;

/** Hard points of an axle, left side: each a row, and what those say that say nothing themselves. */
export const PointsSection = ({ context, axle }: { readonly context: FieldsContext; readonly axle: AxleName }) => {
  const { editing, at, onSelect } = context;
  const rows = pointRows(editing.sheet, axle);
  // Where somebody types from figure to figure nothing opens in between.
  const [typedIn, setTypedIn] = useState<string | null>(null);
  return (
    <>
      <table className="points">
        <caption className="note">
          Left side at ride height, mm: x forward from the front axle, y left from the middle, z up from the ground. A
          unit may stand behind a figure. A point that was measured says so under known by: that narrows its bands.
          Arrow keys move a figure by 1 mm, with Shift by 10; Enter goes to the next figure, with Control the arrows go
          to the point above or below.
        </caption>
        <thead>
          <tr>
            <th scope="col" className="points-head">
              Point
            </th>
            <th scope="col" className="points-head">
              x, mm
            </th>
            <th scope="col" className="points-head">
              y, mm
            </th>
            <th scope="col" className="points-head">
              z, mm
            </th>
            <th scope="col" className="points-head">
              known by
            </th>
          </tr>
        </thead>
        <tbody onKeyDown={walkPoints}>
          {rows.map((row) => {
            const place = formatSheetPath(row.path);
            return (
              <PointRow
                key={place}
                editing={editing}
                row={row}
                selected={at !== null && isAtOrIn(at, place)}
                open={typedIn !== place}
                onSelect={(by) => {
                  setTypedIn(by === "figure" ? place : null);
                  onSelect(place);
                }}
              />
            );
          })}
        </tbody>
      </table>
      <AxleDefaults context={context} axle={axle} of="Points" keys={DEFAULTS} />
    </>
  );
};
