import { FindingNote } from "../fields/finding-note.tsx";
import { NumberInput } from "../fields/number-input.tsx";
import { withCoordinate } from "../model/edit-point.ts";
import { choiceWords } from "../model/field-words.ts";
import { findingsIn } from "../model/findings-of-sheet.ts";
import type { PointRow as Row } from "../model/hard-points.ts";
import { coordinatesPath, ownSaid } from "../model/hard-points.ts";
import { formatSheetPath } from "../model/sheet-path.ts";
import { sheetValueAt } from "../model/sheet-value.ts";
import { formatTyped } from "../model/typed-number.ts";
import type { Editing } from "../use-editing.ts";
import { PointSaid } from "./point-said.tsx";

const COORDINATES = ["x", "y", "z"] as const;

interface PointRowProps {
  readonly editing: Editing;
  readonly row: Row;
  readonly selected: boolean;
  /** Whether it shows, selected, how well it is known. */
  readonly open: boolean;
  readonly onSelect: (by: "name" | "figure") => void;
}

/** What a row says of how well its point is known: its own words, else the origin that counts for the axle. */
const saidWords = (sheet: unknown, { path }: Row): string => {
  const { sd, origin } = ownSaid(sheet, path);
  const usual = sheetValueAt(sheet, [path[0] ?? "", "defaults", "origin"]);
  const words = choiceWords(formatTyped(origin ?? usual ?? "guess"));
  return Array.isArray(sd) ? `sd ${sd.map(formatTyped).join(", ")}; ${words}` : words;
};

/** One point: its name selects it and opens where it comes from, its coordinates are typed. */
export const PointRow = ({ editing, row, selected, open, onSelect }: PointRowProps) => {
  const { sheet, findings } = editing;
  const place = formatSheetPath(row.path);
  const path = coordinatesPath(sheet, row.path);
  const value = sheetValueAt(sheet, path);
  const wrong = findingsIn(findings, row.path);
  const note = `note-${place}`;
  return (
    <>
      <tr className="point-row" data-selected={selected} data-place={place}>
        <th scope="row">
          <button type="button" className="point-name" aria-pressed={selected} onClick={() => onSelect("name")}>
            <span>{row.part}</span> <span className="label">{row.end}</span>
          </button>
        </th>
        {COORDINATES.map((name, axis) => (
          <td key={name} data-place={formatSheetPath([...path, axis])}>
            <NumberInput
              name={`${row.name}, ${name} in mm`}
              value={Array.isArray(value) ? value[axis] : axis === 0 && typeof value === "string" ? value : undefined}
              wrong={wrong.some(
                ({ path: at }) =>
                  at === place || at === formatSheetPath(path) || at === formatSheetPath([...path, axis]),
              )}
              unit="mm"
              {...(wrong.length === 0 ? {} : { describedBy: note })}
              onFocus={() => onSelect("figure")}
              onValue={(coordinate) =>
                editing.change(withCoordinate(sheet, row.path, axis, coordinate), formatSheetPath([...path, axis]))
              }
            />
          </td>
        ))}
        <td className="point-said">
          {row.isHard ? (
            <button
              type="button"
              className="point-known"
              // By keyboard the name beside it does the same, one stop earlier.
              tabIndex={-1}
              aria-label={`${row.name}, known by ${saidWords(sheet, row)}: change it`}
              aria-expanded={selected && open}
              onClick={() => onSelect("name")}
            >
              {saidWords(sheet, row)}
            </button>
          ) : null}
        </td>
      </tr>
      {wrong.length === 0 ? null : (
        <tr>
          <td colSpan={5}>
            <FindingNote id={note} findings={wrong} />
          </td>
        </tr>
      )}
      {selected && open && row.isHard ? (
        <tr className="point-detail">
          <td colSpan={5}>
            <PointSaid editing={editing} row={row} />
          </td>
        </tr>
      ) : null}
    </>
  );
};
