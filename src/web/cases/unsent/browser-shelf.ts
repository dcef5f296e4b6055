import { parseEntry, type UnsentEntry } from "./entry.ts";

const PREFIX = "underbench.unsent.";

/** Where entries wait in this browser; each under its own key, so that two windows do not write over each other. */
export interface Shelf {
  /** Entries by key. */
  load(): ReadonlyMap<string, UnsentEntry>;
  /** False where the browser keeps nothing (full, or switched off). */
  keep(key: string, entry: UnsentEntry): boolean;
  drop(key: string): void;
}

const tried = <T>(run: () => T, otherwise: T): T => {
  try {
    return run();
  } catch (cause) {
    if (cause instanceof DOMException) return otherwise;
    throw cause;
  }
};

const storedKeys = (): readonly string[] =>
  Array.from({ length: localStorage.length }, (_, index) => localStorage.key(index) ?? "").filter((key) =>
    key.startsWith(PREFIX),
  );

/** The browser's own storage as a shelf. */
export const browserShelf: Shelf = {
  load: () =>
    tried(() => {
      const entries = new Map<string, UnsentEntry>();
      for (const key of storedKeys()) {
        const entry = parseEntry(localStorage.getItem(key) ?? "");
        if (entry !== null) entries.set(key.slice(PREFIX.length), entry);
      }
      return entries;
    }, new Map()),
  keep: (key, entry) =>
    tried(() => {
      localStorage.setItem(PREFIX + key, JSON.stringify(entry));
      return true;
    }, false),
  drop: (key) => tried(() => localStorage.removeItem(PREFIX + key), undefined),
};

/** True for a key of the browser's storage that holds an entry. */
export const isShelfKey = (key: string | null): boolean => key === null || key.startsWith(PREFIX);
