import { statSync } from "node:fs";
import Sqlite, { type Database } from "better-sqlite3";
import type { StoredDocument } from "#casework";
import type { ArchiveReader } from "../archive-repository.ts";
import { documentOfRow, isWholeDocumentRow } from "../document-row.ts";
import { isWholeLookRow, lookOfRow } from "../look-row.ts";
import type { DocumentVersionRow, LookRow } from "../tables.ts";
import { damagedTrouble } from "./sqlite-trouble.ts";

/** What could still be read of a damaged database. */
export interface SalvageReport {
  readonly documents: number;
  readonly looks: number;
  /** Looks that were acknowledged and cannot be read; null where not even their number can. */
  readonly lostLooks: number | null;
}

/** So many numbers in a row without a readable row, and there is nothing more (invented bound). */
const mostMissing = 100_000;

/** The result of reading, or undefined where the page it lies on is damaged. */
const readable = <T>(read: () => T): { readonly value: T } | undefined => {
  try {
    return { value: read() };
  } catch (problem) {
    if (problem instanceof Sqlite.SqliteError && /^SQLITE_(CORRUPT|IOERR)/.test(problem.code)) return undefined;
    throw problem;
  }
};

type Numbered = { readonly row_number: number };

/** Rows of a table in their order, stepping over what is damaged: from row to row, and number by number across a hole. */
function* readableRows<Row>(database: Database, table: string): Generator<Row> {
  const columns = `select rowid as row_number, * from ${table}`;
  const next = database.prepare(`${columns} where rowid > ? order by rowid limit 1`);
  const exact = database.prepare(`${columns} where rowid = ?`);
  let last = 0;
  let missing = 0;
  while (missing < mostMissing) {
    const found = missing === 0 ? readable(() => next.get(last)) : undefined;
    if (found !== undefined && found.value === undefined) return;
    const row = found?.value ?? readable(() => exact.get(last + 1))?.value;
    if (row === undefined) {
      last++;
      missing++;
    } else {
      const { row_number, ...rest } = row as Numbered;
      last = row_number;
      missing = 0;
      yield rest as Row;
    }
  }
}

/** Opens a database that SQLite would rather not open, to read only. */
const openAnyway = (path: string): Database => {
  const database = new Sqlite(path, { readonly: true });
  database.unsafeMode(true);
  database.pragma("writable_schema = on");
  return database;
};

const wholeDocuments = (database: Database): readonly StoredDocument[] => {
  const documents: StoredDocument[] = [];
  for (const row of readableRows<DocumentVersionRow>(database, "document_version")) {
    if (isWholeDocumentRow(row)) documents.push(documentOfRow(row));
  }
  return documents;
};

/** Versions in their order, numbered without a gap where one of them is lost. */
const renumber = (documents: readonly StoredDocument[]): readonly StoredDocument[] => {
  const versions = new Map<string, number>();
  return documents
    .toSorted((one, other) => one.version - other.version)
    .map((document) => {
      const key = `${document.kind} ${document.id}`;
      const version = (versions.get(key) ?? 0) + 1;
      versions.set(key, version);
      return { ...document, version };
    });
};

/**
 * Reads out of a damaged database every row that is still whole, told by its digest; nothing is written to the file.
 * Throws a RecordsTrouble where nothing can be read at all.
 */
export const salvageSqlite = async (path: string, read: ArchiveReader): Promise<SalvageReport> => {
  if ((statSync(path, { throwIfNoEntry: false })?.size ?? 0) === 0) throw damagedTrouble("an empty database file");
  const database = openAnyway(path);
  try {
    const documents = renumber(wholeDocuments(database));
    for (const document of documents) await read.document(document);
    let looks = 0;
    for (const row of readableRows<LookRow>(database, "look")) {
      if (!isWholeLookRow(row)) continue;
      looks++;
      await read.look(lookOfRow(row));
    }
    const counter = readable(() => database.prepare("select value from counter where name = 'look'").get());
    const acknowledged = (counter?.value as { readonly value: number } | undefined)?.value;
    return { documents: documents.length, looks, lostLooks: acknowledged === undefined ? null : acknowledged - looks };
  } catch (problem) {
    if (problem instanceof Sqlite.SqliteError) throw damagedTrouble("a database of which nothing can be read", problem);
    throw problem;
  } finally {
    database.close();
  }
};
