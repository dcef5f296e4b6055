import type { AxleName } from "../../car.ts";
import type { FieldsContext } from "../fields/fields-context.ts";
import { pointRows } from "../model/hard-points.ts";
import { formatSheetPath, isAtOrIn } from "../model/sheet-path.ts";
import { AxleDefaults } from "./axle-defaults.tsx";
import { PointRow } from "./point-row.tsx";

const DEFAULTS = ["origin", "sd_mm"] as const;

/** Hard points of an axle, left side: each a row, and what those say that say nothing themselves. */
export const PointsSection = ({ context, axle }: { readonly context: FieldsContext; readonly axle: AxleName }) => {
  const { editing, at, onSelect } = context;
  return (
    <>
      <table className="points">
        <caption className="note">
          Left side at ride height, mm: x forward from the front axle, y left from the middle, z up from the ground.
          Arrow keys move a figure by 1 mm, with Shift by 10.
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
        <tbody>
          {pointRows(editing.sheet, axle).map((row) => (
            <PointRow
              key={formatSheetPath(row.path)}
              editing={editing}
              row={row}
              selected={at !== null && isAtOrIn(at, formatSheetPath(row.path))}
              onSelect={onSelect}
            />
          ))}
        </tbody>
      </table>
      <AxleDefaults context={context} axle={axle} of="Points" keys={DEFAULTS} />
    </>
  );
};
