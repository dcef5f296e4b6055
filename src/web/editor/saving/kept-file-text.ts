import { isKeyed } from "../model/sheet-value.ts";

const PREFIX = "underbench.family-text.";

/** Text of a whole file that is no sheet yet. */
export interface UnfinishedText {
  readonly text: string;
  /** The file as the sheet stood when this was typed. */
  readonly over: string;
}

/** Runs on the browser's storage; null where it keeps nothing, or something else stands there. */
const tried = <T>(run: () => T): T | null => {
  try {
    return run();
  } catch (cause) {
    if (cause instanceof DOMException || cause instanceof SyntaxError) return null;
    throw cause;
  }
};

/** What was left unfinished of a family's file in this browser; null where nothing was. */
export const loadUnfinishedText = (id: string): UnfinishedText | null =>
  tried(() => {
    const value: unknown = JSON.parse(localStorage.getItem(PREFIX + id) ?? "null");
    return isKeyed(value) && typeof value.text === "string" && typeof value.over === "string"
      ? { text: value.text, over: value.over }
      : null;
  });

/** Keeps text that is no sheet yet; null forgets it. */
export const keepUnfinishedText = (id: string, unfinished: UnfinishedText | null): void => {
  tried(() => {
    if (unfinished === null) localStorage.removeItem(PREFIX + id);
    else localStorage.setItem(PREFIX + id, JSON.stringify(unfinished));
  });
};
