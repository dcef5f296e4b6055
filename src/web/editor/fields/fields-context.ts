import type { Editing } from "../use-editing.ts";

/** What the fields of a section share. */
export interface FieldsContext {
  readonly editing: Editing;
  /** The selected place, as findings write it; an entry of a list is open where it lies on the way there. */
  readonly at: string | null;
  readonly onSelect: (at: string | null) => void;
  /** Keys that are edited in a section of their own and left out here. */
  readonly elsewhere: ReadonlySet<string>;
}
