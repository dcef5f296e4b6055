import type { PlanDocument } from "#casework";

/** A change of the visits that can be taken back. */
export interface VisitEdit {
  /** What was done: "Next service taken out". */
  readonly done: string;
  readonly before: PlanDocument;
}

/** Changes of this window, by visit, the last at the end. */
const edits = new Map<string, readonly VisitEdit[]>();

/** What was changed at the plan of a visit since this window opened, the last at the end. */
export const editsOf = (visit: string): readonly VisitEdit[] => edits.get(visit) ?? [];

/** Remembers one more change. */
export const rememberEdit = (visit: string, edit: VisitEdit): void => {
  edits.set(visit, [...editsOf(visit), edit]);
};

/** Forgets the last change, because it was taken back. */
export const forgetLastEdit = (visit: string): void => {
  edits.set(visit, editsOf(visit).slice(0, -1));
};
