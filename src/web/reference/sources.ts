/** One entry of the register of sources. */
export interface Source {
  readonly key: string;
  readonly gives: string;
  readonly citation: string;
  /** Computed, read, from memory or invented. */
  readonly status: string;
}

export interface SourceGroup {
  readonly title: string;
  readonly sources: readonly Source[];
}

const CELLS = 4;

/** The cells of a table row; null for any other line and for the head of the table. */
const cellsOf = (line: string): readonly string[] | null => {
  if (!line.startsWith("|")) return null;
  const cells = line
    .split("|")
    .slice(1, -1)
    .map((cell) => cell.trim());
  return cells.length === CELLS && cells[0] !== "key" && !/^-+$/.test(cells[0] ?? "") ? cells : null;
};

/** Reads the register of sources from its text: a heading per group, a row of four cells per source. */
export const parseSources = (text: string): readonly SourceGroup[] =>
  text
    .split(/^## /m)
    .slice(1)
    .map((part) => {
      const [title = "", ...lines] = part.split("\n");
      const rows = lines.map(cellsOf).filter((cells) => cells !== null);
      return {
        title: title.trim(),
        sources: rows.map(([key = "", gives = "", citation = "", status = ""]) => ({ key, gives, citation, status })),
      };
    });

/** Keys named in the source line of a figure, with the words between them, in order. */
export const splitByKeys = (
  line: string,
  keys: ReadonlySet<string>,
): readonly { readonly text: string; readonly isKey: boolean }[] =>
  line
    .split(/([a-z0-9]+(?:-[a-z0-9]+)*)/)
    .filter((text) => text !== "")
    .map((text) => ({ text, isKey: keys.has(text) }));
