import { withEntered } from "./entered-figure.ts";
import { withTiesThatHold } from "./point-ties.ts";
import { formatSheetPath, type SheetPath } from "./sheet-path.ts";
import { isSameValue, withSheetValue } from "./sheet-value.ts";

/** A sheet as the program keeps it: its text to the letter, what it says, and its version. */
export interface KeptSheet {
  readonly text: string;
  readonly sheet: unknown;
  readonly version: string | null;
}

interface Step {
  readonly sheet: unknown;
  /** What the next step changed, so that typing on in one place is one step; null: never joined. */
  readonly place: string | null;
}

/** A sheet being edited: what it was begun from, and every state since, for undo. */
export interface Draft {
  readonly base: KeptSheet;
  readonly sheet: unknown;
  readonly past: readonly Step[];
  readonly future: readonly Step[];
}

/** As many steps as anyone takes back (invented bound). */
const MOST_STEPS = 500;

/** A draft in which nothing has been changed yet, or the one that was left (`sheet`). */
export const beginDraft = (base: KeptSheet, sheet: unknown = base.sheet): Draft => ({
  base,
  sheet,
  past: isSameValue(sheet, base.sheet) ? [] : [{ sheet: base.sheet, place: null }],
  future: [],
});

/** Puts another sheet in the place of the present one; `place` says where it differs, null: here and there. */
export const changeDraft = (draft: Draft, changed: unknown, place: string | null): Draft => {
  if (isSameValue(changed, draft.sheet)) return draft;
  const sheet = withTiesThatHold(draft.base.sheet, draft.sheet, changed);
  const last = draft.past.at(-1);
  const joined = place !== null && last?.place === place && draft.future.length === 0;
  return {
    ...draft,
    sheet,
    past: joined ? draft.past : [...draft.past, { sheet: draft.sheet, place }].slice(-MOST_STEPS),
    future: [],
  };
};

/** Writes one value, which is then no longer an assumed one; typing on in the same place stays one step of undo. */
export const editDraft = (draft: Draft, path: SheetPath, value: unknown): Draft =>
  changeDraft(draft, withEntered(withSheetValue(draft.sheet, path, value), path), formatSheetPath(path));

/** One step back; the same draft where there is none. */
export const undoDraft = (draft: Draft): Draft => {
  const last = draft.past.at(-1);
  if (last === undefined) return draft;
  const next: Step = { sheet: draft.sheet, place: last.place };
  return { ...draft, sheet: last.sheet, past: draft.past.slice(0, -1), future: [next, ...draft.future] };
};

/** One step forward again; the same draft where there is none. */
export const redoDraft = (draft: Draft): Draft => {
  const [next, ...rest] = draft.future;
  if (next === undefined) return draft;
  const step: Step = { sheet: draft.sheet, place: next.place };
  return { ...draft, sheet: next.sheet, past: [...draft.past, step], future: rest };
};

/** True where the draft says something else than what it was begun from. */
export const isChanged = ({ base, sheet }: Draft): boolean => !isSameValue(base.sheet, sheet);
