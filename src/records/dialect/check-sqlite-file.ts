import { statSync } from "node:fs";
import Sqlite, { type Database } from "better-sqlite3";
import { isWholeDocumentRow } from "../document-row.ts";
import { isWholeLookRow } from "../look-row.ts";
import { newerSchemaTrouble } from "../migrations/migrate.ts";
import { RecordsTrouble } from "../records-trouble.ts";
import type { DocumentVersionRow, LookRow } from "../tables.ts";
import { damagedTrouble, sqliteTrouble } from "./sqlite-trouble.ts";

/** The smallest page there is; SQLite would write over a file that is shorter. */
const smallestPageBytes = 512;
/** A write-ahead log that holds more than its own header. */
const emptyLogBytes = 32;

const sizeOf = (path: string): number => statSync(path, { throwIfNoEntry: false })?.size ?? 0;

const hasTable = (database: Database, name: string): boolean =>
  database.prepare("select 1 from sqlite_master where type = 'table' and name = ?").get(name) !== undefined;

const checkOwner = (database: Database, known: number): void => {
  if (!hasTable(database, "schema_version")) {
    const tables = database.prepare("select count(*) as count from sqlite_master").get() as { readonly count: number };
    if (tables.count === 0) return;
    throw new RecordsTrouble({
      code: "records-foreign",
      path: "",
      got: "a database with other tables",
      needed: "the database of this program, or none",
      hint: "Another program wrote it. Point DATA_DIR at another folder. Nothing was changed.",
    });
  }
  const { found } = database.prepare("select coalesce(max(number), 0) as found from schema_version").get() as {
    readonly found: number;
  };
  if (found > known) throw newerSchemaTrouble(found, known);
};

const checkStructure = (database: Database): void => {
  const [first] = database.pragma("quick_check(1)") as readonly { readonly quick_check: string }[];
  if (first?.quick_check !== "ok") throw damagedTrouble(`a database file that is not whole: ${first?.quick_check}`);
};

const checkEveryRow = (database: Database): void => {
  if (hasTable(database, "look")) {
    for (const row of database.prepare("select * from look").iterate() as IterableIterator<LookRow>) {
      if (!isWholeLookRow(row)) throw damagedTrouble(`a look that is not as it was written: ${row.id}`);
    }
  }
  if (hasTable(database, "document_version")) {
    const rows = database.prepare("select * from document_version").iterate() as IterableIterator<DocumentVersionRow>;
    for (const row of rows) {
      if (!isWholeDocumentRow(row))
        throw damagedTrouble(`a document that is not as it was written: ${row.kind} ${row.id}`);
    }
  }
};

/** True where the file does not hold all its pages: after a crash the log has them, in a cut file nobody has. */
const isShort = (database: Database, path: string): boolean => {
  const pages = database.pragma("page_count", { simple: true }) as number;
  const pageSize = database.pragma("page_size", { simple: true }) as number;
  return sizeOf(path) !== pages * pageSize;
};

const check = (database: Database, path: string, known: number, everyRow: boolean): void => {
  checkOwner(database, known);
  checkStructure(database);
  if (everyRow || isShort(database, path)) checkEveryRow(database);
};

/**
 * Looks a database file over before anything is written to it: that it is this program's, of no newer version than
 * `known`, and whole. The rows themselves are read where the file is shorter or longer than it says, or on demand.
 * A file that is not there is fine; throws a RecordsTrouble for everything that is not.
 */
export const checkSqliteFile = (path: string, known: number, everyRow = false): void => {
  const size = sizeOf(path);
  if (size > 0 && size < smallestPageBytes) throw damagedTrouble(`a database file of ${size} bytes`);
  if (size === 0) {
    if (sizeOf(`${path}-wal`) <= emptyLogBytes) return;
    throw damagedTrouble("a write-ahead log whose database file is empty or gone");
  }
  let database: Database | null = null;
  try {
    database = new Sqlite(path, { readonly: true, timeout: 5000 });
    check(database, path, known, everyRow);
  } catch (problem) {
    throw sqliteTrouble(problem) ?? problem;
  } finally {
    database?.close();
  }
};
