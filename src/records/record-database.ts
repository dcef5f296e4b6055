import type { Kysely } from "kysely";
import type { RecordsTrouble } from "./records-trouble.ts";
import type { Tables } from "./tables.ts";

/** What a repository needs of a database, whichever it is. */
export interface RecordDatabase {
  readonly db: Kysely<Tables>;
  /** What a person can do about a problem of this database; null for a fault of ours. */
  readonly explain: (problem: unknown) => RecordsTrouble | null;
}

/** Runs statements and lets what goes wrong leave as a RecordsTrouble where somebody can do something about it. */
export const attempt = async <T>({ explain }: RecordDatabase, run: () => Promise<T>): Promise<T> => {
  try {
    return await run();
  } catch (problem) {
    throw explain(problem) ?? problem;
  }
};

/** Lists in parts of at most `size`, so that no statement has more parameters than a database takes. */
export const inParts = <T>(list: readonly T[], size: number): readonly (readonly T[])[] =>
  Array.from({ length: Math.ceil(list.length / size) }, (_, part) => list.slice(part * size, (part + 1) * size));
