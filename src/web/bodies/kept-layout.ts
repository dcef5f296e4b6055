const KEY = "underbench-layout-file";

/** A file that was read in: what it is called, and its text to the letter. */
export interface LayoutFile {
  readonly name: string;
  readonly text: string;
}

/** The file kept for this session; null where none is, or none can be kept. */
export const loadKeptLayout = (): LayoutFile | null => {
  try {
    const value: unknown = JSON.parse(sessionStorage.getItem(KEY) ?? "null");
    if (typeof value !== "object" || value === null || !("name" in value) || !("text" in value)) return null;
    const { name, text } = value;
    return typeof name === "string" && typeof text === "string" ? { name, text } : null;
  } catch {
    return null;
  }
};

/** Keeps a file for this session; false where the browser keeps nothing. */
export const keepLayout = (file: LayoutFile): boolean => {
  try {
    sessionStorage.setItem(KEY, JSON.stringify(file));
    return true;
  } catch {
    return false;
  }
};
