import type { AxleName } from "../../car.ts";
import type { FieldsContext } from "../fields/fields-context.ts";
import { SheetField } from "../fields/sheet-fields.tsx";
import { formAt } from "../model/field-form.ts";

interface AxleDefaultsProps {
  readonly context: FieldsContext;
  readonly axle: AxleName;
  /** "Joints", "Points". */
  readonly of: string;
  /** Keys of the axle's defaults that speak for them. */
  readonly keys: readonly string[];
}

/** What an axle says once for everything of a kind that says nothing itself. */
export const AxleDefaults = ({ context, axle, of, keys }: AxleDefaultsProps) => {
  const title = `${of} that say nothing themselves`;
  return (
    <section className="field-group" aria-label={title}>
      <div className="field-group-head">
        <h2>{title}</h2>
      </div>
      {keys.map((key) => (
        <SheetField
          key={key}
          context={context}
          path={[axle, "defaults", key]}
          form={formAt([axle, "defaults", key])}
          required={false}
        />
      ))}
    </section>
  );
};
