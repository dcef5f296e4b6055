import { NumberField } from "../../begin/number-field.tsx";
import type { NumberForm } from "../model/field-form.ts";
import { findingsAt, findingWords } from "../model/findings-of-sheet.ts";
import { sheetValueAt } from "../model/sheet-value.ts";
import { type EntryProps, NOT_ON_FILE } from "./entry-props.ts";
import { useTypedText } from "./number-input.tsx";

/** One number of the sheet. */
export const NumberEntry = ({ editing, path, form, label, unit }: EntryProps<NumberForm>) => {
  const [shown, type] = useTypedText(sheetValueAt(editing.sheet, path), form, unit);
  const wrong = findingsAt(editing.findings, path).map(findingWords).join(" ");
  return (
    <NumberField
      label={label}
      unit={unit}
      low={form.low}
      high={form.high}
      value={shown}
      blank={NOT_ON_FILE}
      wrong={wrong === "" ? null : wrong}
      note={form.description}
      onChange={(text) => editing.edit(path, type(text))}
    />
  );
};

/** Money is entered in whole units and kept in hundredths. */
const HUNDREDTHS = 100;
const fromHundredths = (value: unknown): unknown => (typeof value === "number" ? value / HUNDREDTHS : value);
/** A figure of money whose hundredths are whole but for the way halves are kept in binary is whole. */
const toHundredths = (value: unknown): unknown => {
  if (typeof value !== "number") return value;
  const cents = value * HUNDREDTHS;
  return Math.abs(cents - Math.round(cents)) < 1e-6 ? Math.round(cents) : cents;
};

/** A price. */
export const MoneyEntry = ({ editing, path, form, label }: EntryProps<NumberForm>) => {
  const [shown, type] = useTypedText(fromHundredths(sheetValueAt(editing.sheet, path) ?? undefined));
  const wrong = findingsAt(editing.findings, path).map(findingWords).join(" ");
  return (
    <NumberField
      label={label}
      unit=""
      low={0}
      high={form.high / HUNDREDTHS}
      value={shown}
      blank={NOT_ON_FILE}
      wrong={wrong === "" ? null : wrong}
      note="In the workshop's money. Absent: not on file."
      onChange={(text) => editing.edit(path, toHundredths(type(text)))}
    />
  );
};
