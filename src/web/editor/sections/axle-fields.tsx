import type { AxleName } from "../../car.ts";
import type { FieldsContext } from "../fields/fields-context.ts";
import { SheetField } from "../fields/sheet-fields.tsx";
import { formAt } from "../model/field-form.ts";
import { axleKeysIn } from "../model/sections.ts";

interface AxleFieldsProps {
  readonly context: FieldsContext;
  readonly axle: AxleName;
  readonly section: string;
}

/** A section of an axle made of the sheet's own fields. */
export const AxleFields = ({ context, axle, section }: AxleFieldsProps) => {
  const form = formAt([axle]);
  if (form.kind !== "group") return null;
  const keys = axleKeysIn(
    section,
    form.fields.map(({ key }) => key),
  );
  return form.fields
    .filter(({ key }) => keys.includes(key))
    .map(({ key, form: field, required }) => (
      <SheetField key={key} context={context} path={[axle, key]} form={field} required={required} />
    ));
};
