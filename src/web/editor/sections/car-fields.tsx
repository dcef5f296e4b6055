import type { FieldsContext } from "../fields/fields-context.ts";
import { SheetField } from "../fields/sheet-fields.tsx";
import { formAt } from "../model/field-form.ts";
import { sheetValueAt } from "../model/sheet-value.ts";
import { formatTyped } from "../model/typed-number.ts";

/** Keys of the sheet that stand in sections of their own, or cannot be changed. */
const ELSEWHERE = ["format", "id", "front", "rear", "variants", "life", "work"];

/** What the car line is called, when it was built, and its mass. */
export const CarFields = ({ context }: { readonly context: FieldsContext }) => {
  const form = formAt([]);
  if (form.kind !== "group") return null;
  return (
    <>
      <p className="fixed-entry">
        <span>Kept as</span> <strong>{formatTyped(sheetValueAt(context.editing.sheet, ["id"]))}</strong>
        <span className="note">Cars and visits find the car line by it, so it stays.</span>
      </p>
      {form.fields
        .filter(({ key }) => !ELSEWHERE.includes(key))
        .map(({ key, form: field, required }) => (
          <SheetField key={key} context={context} path={[key]} form={field} required={required} />
        ))}
    </>
  );
};
