import Sqlite, { type Database } from "better-sqlite3";
import { Kysely } from "kysely";
import { migrate } from "../migrations/migrate.ts";
import { knownSchema, migrations } from "../migrations/migrations.ts";
import { RecordsTrouble } from "../records-trouble.ts";
import type { Tables } from "../tables.ts";
import { checkSqliteFile } from "./check-sqlite-file.ts";
import { RecordsSqliteDialect } from "./sqlite-dialect.ts";
import { sqliteTrouble } from "./sqlite-trouble.ts";

/** How long a writer waits for another one, in milliseconds (invented; imports of a workshop take less). */
const busyMs = 5000;

/**
 * What an acknowledged write rests on. journal_mode wal: a write is in the log whole or not at all. synchronous 2
 * (full): the log is on the disk before a write is acknowledged. Source: SQLite's documentation of its pragmas, from memory.
 */
const demanded = { journal_mode: "wal", synchronous: 2, foreign_keys: 1, busy_timeout: busyMs } as const;

/** The settings a write rests on, as the database says they are. */
export type Durability = { readonly [name in keyof typeof demanded]: string | number };

/** Reads the settings back from an open database. */
export const readDurability = (database: Database): Durability => {
  const read = (name: string): string | number => database.pragma(name, { simple: true }) as string | number;
  return {
    journal_mode: read("journal_mode"),
    synchronous: read("synchronous"),
    foreign_keys: read("foreign_keys"),
    busy_timeout: read("busy_timeout"),
  };
};

const demandDurability = (database: Database): void => {
  for (const [name, value] of Object.entries(demanded)) database.pragma(`${name} = ${value}`);
  const found = readDurability(database);
  const off = Object.entries(demanded).filter(([name, value]) => found[name as keyof Durability] !== value);
  if (off.length === 0) return;
  throw new RecordsTrouble({
    code: "records-not-durable",
    path: "",
    got: off.map(([name]) => `${name} ${found[name as keyof Durability]}`).join(", "),
    needed: off.map(([name, value]) => `${name} ${value}`).join(", "),
    hint: "The disk does not let the database keep its promise. Put the data folder on a disk of this machine, not on a network share.",
  });
};

/** An open SQLite database at the newest schema. */
export interface OpenedSqlite {
  readonly database: Database;
  readonly db: Kysely<Tables>;
}

/**
 * Opens (or makes) a database file, checked, set to keep what it acknowledges, and at the newest schema.
 * Throws a RecordsTrouble where that cannot be; a database of a newer version or a damaged one is left untouched.
 */
export const openSqlite = async (path: string): Promise<OpenedSqlite> => {
  checkSqliteFile(path, knownSchema);
  let database: Database | null = null;
  try {
    database = new Sqlite(path, { timeout: busyMs });
    demandDurability(database);
    const db = new Kysely<Tables>({ dialect: new RecordsSqliteDialect(database) });
    await migrate(db, migrations);
    return { database, db };
  } catch (problem) {
    database?.close();
    throw sqliteTrouble(problem) ?? problem;
  }
};
