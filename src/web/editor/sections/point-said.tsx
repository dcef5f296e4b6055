import { useId } from "react";
import { usualPointSdMm } from "#contract";
import { NumberInput } from "../fields/number-input.tsx";
import { withSaid } from "../model/edit-point.ts";
import { choiceWords, ORIGIN_WORDS } from "../model/field-words.ts";
import { findingsIn } from "../model/findings-of-sheet.ts";
import { ownSaid, type PointRow } from "../model/hard-points.ts";
import { formatSheetPath } from "../model/sheet-path.ts";
import { isKeyed, sheetValueAt } from "../model/sheet-value.ts";
import { formatTyped } from "../model/typed-number.ts";
import type { Editing } from "../use-editing.ts";

const COORDINATES = ["x", "y", "z"] as const;

/** Where a point comes from and how well it is known; blank: as the axle's defaults say. */
export const PointSaid = ({ editing, row }: { readonly editing: Editing; readonly row: PointRow }) => {
  const id = useId();
  const { sheet } = editing;
  const { sd, origin } = ownSaid(sheet, row.path);
  const defaults = sheetValueAt(sheet, [row.path[0] ?? "", "defaults"]);
  const usualSd = usualPointSdMm(origin, isKeyed(defaults) ? defaults : {});
  const wrong = findingsIn(editing.findings, [...row.path, "sd_mm"]).length > 0;
  const usual = (axis: number): string => (usualSd === null ? "usual" : formatTyped(usualSd[axis]));
  const write = (said: { readonly sd_mm?: unknown; readonly origin?: unknown }, place: string) =>
    editing.change(withSaid(sheet, row.path, said), formatSheetPath([...row.path, place]));
  const withSd = (axis: number, figure: unknown): unknown => {
    const old: readonly unknown[] = Array.isArray(sd) ? sd : [];
    const next = COORDINATES.map((_, at) => (at === axis ? figure : old[at]) ?? null);
    return next.every((one) => one === null) ? undefined : next;
  };
  return (
    <div className="point-own">
      <fieldset className="figure-row" aria-label={`${row.name}: standard deviation`}>
        <span className="label">standard deviation, mm</span>
        {COORDINATES.map((name, axis) => (
          <NumberInput
            key={name}
            name={`${row.name}, standard deviation along ${name} in mm`}
            value={Array.isArray(sd) ? sd[axis] : undefined}
            wrong={wrong}
            unit="mm"
            blank={usual(axis)}
            onValue={(figure) => write({ sd_mm: withSd(axis, figure) }, "sd_mm")}
          />
        ))}
      </fieldset>
      <label htmlFor={id} className="label">
        known by
      </label>
      <select
        id={id}
        aria-label={`${row.name}, known by`}
        value={typeof origin === "string" ? origin : ""}
        onChange={(event) => write({ origin: event.target.value === "" ? undefined : event.target.value }, "origin")}
      >
        <option value="">as the axle</option>
        {Object.keys(ORIGIN_WORDS).map((word) => (
          <option key={word} value={word}>
            {choiceWords(word)}
          </option>
        ))}
      </select>
    </div>
  );
};
