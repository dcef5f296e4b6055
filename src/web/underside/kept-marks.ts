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

/** As many sets of marks as stay put back-able; the oldest goes first (invented bound). */
const MOST_ASIDE = 6;

const parseAside = (line: string): readonly SetAside[] => {
  const cut = line.indexOf(" ");
  const why = line.slice(0, cut);
  return why === "taken-off" || why === "address" ? [{ why, marks: line.slice(cut + 1) }] : [];
};

/** The sets of marks that are off the drawing and can be put back, the newest first. */
export const loadSetAside = (familyId: string): readonly SetAside[] =>
  (read(ASIDE + familyId) ?? "").split("\n").flatMap(parseAside);

/** Keeps these sets of marks so that they can be put back; none forgets what was. */
export const keepSetAside = (familyId: string, aside: readonly SetAside[]): boolean =>
  write(ASIDE + familyId, aside.map(({ why, marks }) => `${why} ${marks}`).join("\n"));

/** The sets with one more on top; the same marks stand there once, the newest first. */
export const withAside = (aside: readonly SetAside[], next: SetAside): readonly SetAside[] =>
  [next, ...aside.filter(({ marks }) => marks !== next.marks)].slice(0, MOST_ASIDE);
