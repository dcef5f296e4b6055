import type { FieldForm } from "../model/field-form.ts";
import type { SheetPath } from "../model/sheet-path.ts";
import type { Editing } from "../use-editing.ts";

export const NOT_ON_FILE = "not on file";

/** What every entry needs: the sheet it belongs to, its place, and what it is called. */
export interface EntryProps<Form extends FieldForm> {
  readonly editing: Editing;
  readonly path: SheetPath;
  readonly form: Form;
  readonly label: string;
  readonly unit: string;
}
export type FormOf<Kind extends FieldForm["kind"]> = Extract<FieldForm, { readonly kind: Kind }>;
