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

/** No row of ours is shorter than this, so that a file holds at most its length by this many rows. */
const shortestRowBytes = 100;

/** What reading gave; undefined where the page it lies on is damaged. */
type Read<T> = { readonly value: T } | undefined;

const readable = <T>(read: () => T): Read<T> => {
  try {
    return { value: read() };
  } catch (problem) {
    if (problem instanceof Sqlite.SqliteError && /^SQLITE_(CORRUPT|IOERR)/.test(problem.code)) return undefined;
    throw problem;
  }
};

type Numbered = { readonly row_number: number };

/**
 * Rows of a table in their order, stepping over what is damaged: from row to row, and number by number across a hole,
 * up to the highest number there can be.
 */
function* readableRows<Row>(database: Database, table: string, highest: number): Generator<Row> {
  const columns = `select rowid as row_number, * from ${table}`;
  const next = database.prepare(`${columns} where rowid > ? order by rowid limit 1`);
  const exact = database.prepare(`${columns} where rowid = ?`);
  let last = 0;
  let inHole = false;
  while (last < highest) {
    const found: Read<unknown> = inHole ? undefined : readable(() => next.get(last));
    if (found !== undefined && found.value === undefined) return;
    const row = (found?.value ?? readable(() => exact.get(last + 1))?.value) as Numbered | undefined;
    inHole = row === undefined || row.row_number <= last;
    if (row === undefined || row.row_number <= last) last++;
    else {
      const { row_number, ...rest } = row;
      last = row_number;
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

const wholeDocuments = (database: Database, highest: number): readonly StoredDocument[] => {
  const documents: StoredDocument[] = [];
  for (const row of readableRows<DocumentVersionRow>(database, "document_version", highest)) {
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

/** How many looks were acknowledged; null where the counter cannot be read. */
const countAcknowledged = (database: Database): number | null => {
  const counter = readable(() => database.prepare("select value from counter where name = 'look'").get());
  return (counter?.value as { readonly value: number } | undefined)?.value ?? null;
};

/**
 * Reads out of a damaged database every row that is still whole, told by its digest; nothing is written to the file.
 * Throws a RecordsTrouble where nothing can be read at all.
 */
export const salvageSqlite = async (path: string, read: ArchiveReader): Promise<SalvageReport> => {
  const size = statSync(path, { throwIfNoEntry: false })?.size ?? 0;
  if (size === 0) throw damagedTrouble("an empty database file");
  const highest = Math.ceil(
    (size + (statSync(`${path}-wal`, { throwIfNoEntry: false })?.size ?? 0)) / shortestRowBytes,
  );
  const database = openAnyway(path);
  try {
    const documents = renumber(wholeDocuments(database, highest));
    for (const document of documents) await read.document(document);
    const acknowledged = countAcknowledged(database);
    let looks = 0;
    for (const row of readableRows<LookRow>(database, "look", Math.min(acknowledged ?? highest, highest))) {
      if (!isWholeLookRow(row)) continue;
      looks++;
      await read.look(lookOfRow(row));
    }
    return {
      documents: documents.length,
      looks,
      lostLooks: acknowledged === null ? null : acknowledged - looks,
    };
  } catch (problem) {
    if (problem instanceof Sqlite.SqliteError) throw damagedTrouble("a database of which nothing can be read", problem);
    throw problem;
  } finally {
    database.close();
  }
};
