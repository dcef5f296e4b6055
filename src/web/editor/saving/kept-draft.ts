import { isKeyed } from "../model/sheet-value.ts";

const PREFIX = "underbench.family-draft.";

/** A draft left in this browser: what it says, and the text and version it was begun from. */
export interface LeftDraft {
  readonly sheet: unknown;
  readonly baseText: string;
  readonly baseVersion: string | null;
}

const tried = <T>(run: () => T, otherwise: T): T => {
  try {
    return run();
  } catch (cause) {
    if (cause instanceof DOMException || cause instanceof SyntaxError) return otherwise;
    throw cause;
  }
};

/** Reads back what was left of a family; null where nothing was. */
export const loadLeftDraft = (id: string): LeftDraft | null =>
  tried(() => {
    const value: unknown = JSON.parse(localStorage.getItem(PREFIX + id) ?? "null");
    if (!isKeyed(value) || typeof value.baseText !== "string") return null;
    const { sheet, baseText, baseVersion } = value;
    return { sheet, baseText, baseVersion: typeof baseVersion === "string" ? baseVersion : null };
  }, null);

/** Keeps a draft; false where the browser keeps nothing (full, or switched off). */
export const keepLeftDraft = (id: string, draft: LeftDraft): boolean =>
  tried(() => {
    localStorage.setItem(PREFIX + id, JSON.stringify(draft));
    return true;
  }, false);

/** Forgets what was left: it is saved, or was taken back. */
export const dropLeftDraft = (id: string): void => tried(() => localStorage.removeItem(PREFIX + id), undefined);
