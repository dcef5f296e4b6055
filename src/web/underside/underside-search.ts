import { type ConditionSearch, readConditionSearch } from "../effect/condition-in-address.ts";

/** What of an underside stands in its address, so that back is undo and a link can be sent. */
export interface UndersideSearch extends ConditionSearch {
  /** Marks as formatMarks writes them. */
  readonly marks?: string;
  /** Id of the selected position. */
  readonly at?: string;
}

const text = (value: unknown): string | null => (typeof value === "string" && value !== "" ? value : null);

/** Reads the search part of an address; what is no text, or no number, is left out. */
export const readUndersideSearch = (search: Record<string, unknown>): UndersideSearch => {
  const [marks, at] = [text(search.marks), text(search.at)];
  return {
    ...(marks === null ? {} : { marks }),
    ...(at === null ? {} : { at }),
    ...readConditionSearch(search),
  };
};
