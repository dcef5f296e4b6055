/** Marks that are off the drawing but can be put back, and how they came to be off it. */
export interface SetAside {
  readonly marks: string;
  /** All were taken off, or an address brought others in their place. */
  readonly why: "taken-off" | "address";
}

const KEPT = "underbench.marks.";
const ASIDE = "underbench.marks-aside.";

/** Reads from the browser's storage; null where nothing stands there or the browser keeps nothing. */
const read = (key: string): string | null => {
  try {
    return localStorage.getItem(key);
  } catch (cause) {
    if (cause instanceof DOMException) return null;
    throw cause;
  }
};

/** Writes to the browser's storage ("" removes); false where the browser keeps nothing. */
const write = (key: string, text: string): boolean => {
  try {
    if (text === "") localStorage.removeItem(key);
    else localStorage.setItem(key, text);
    return true;
  } catch (cause) {
    if (cause instanceof DOMException) return false;
    throw cause;
  }
};

/** The marks this browser keeps of a car line, as formatMarks writes them; "" for none. */
export const loadKeptMarks = (familyId: string): string => read(KEPT + familyId) ?? "";

/** Keeps the marks of a car line in this browser; false where it keeps nothing. */
export const keepMarks = (familyId: string, marks: string): boolean => write(KEPT + familyId, marks);

/** What was set aside of a car line's marks; null where nothing was. */
export const loadSetAside = (familyId: string): SetAside | null => {
  const text = read(ASIDE + familyId);
  if (text === null) return null;
  const cut = text.indexOf(" ");
  const why = text.slice(0, cut);
  return why === "taken-off" || why === "address" ? { why, marks: text.slice(cut + 1) } : null;
};

/** Sets marks aside so that they can be put back; null forgets what was. */
export const setMarksAside = (familyId: string, aside: SetAside | null): boolean =>
  write(ASIDE + familyId, aside === null ? "" : `${aside.why} ${aside.marks}`);
