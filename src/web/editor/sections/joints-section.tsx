import type { AxleName } from "../../car.ts";
import type { FieldsContext } from "../fields/fields-context.ts";
import { OpenRow } from "../fields/open-row.tsx";
import { SheetField } from "../fields/sheet-fields.tsx";
import { formAt, keysOf } from "../model/field-form.ts";
import { findingsIn } from "../model/findings-of-sheet.ts";
import { jointRows, jointSummary } from "../model/joints.ts";
import { formatSheetPath, isAtOrIn } from "../model/sheet-path.ts";
import { sheetValueAt } from "../model/sheet-value.ts";
import { AxleDefaults } from "./axle-defaults.tsx";

const DEFAULTS = ["rate_origin", "rate_sd_share", "torn_share"] as const;

/** Bushes, ball joints and mounts of an axle: each a row that opens, and what those say that say nothing themselves. */
export const JointsSection = ({ context, axle }: { readonly context: FieldsContext; readonly axle: AxleName }) => {
  const { editing, at, onSelect } = context;
  return (
    <>
      {jointRows(editing.sheet, axle).map(({ path, name }) => {
        const place = formatSheetPath(path);
        const open = at !== null && isAtOrIn(at, place);
        return (
          <OpenRow
            key={place}
            place={place}
            name={name}
            summary={jointSummary(sheetValueAt(editing.sheet, path))}
            wrong={findingsIn(editing.findings, path).length}
            open={open}
            onPress={() => onSelect(open ? axle : place)}
          >
            <SheetField context={context} path={path} form={formAt(keysOf(path))} required={false} />
          </OpenRow>
        );
      })}
      <AxleDefaults context={context} axle={axle} of="Joints" keys={DEFAULTS} />
    </>
  );
};
