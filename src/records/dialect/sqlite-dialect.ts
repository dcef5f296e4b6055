import type { Database } from "better-sqlite3";
import {
  CompiledQuery,
  type DatabaseConnection,
  type Driver,
  SqliteDialect,
  SqliteDriver,
  type TransactionSettings,
} from "kysely";

/**
 * Takes the place of a writer at the beginning of a transaction, so that two never begin from the same past; and rolls
 * back only what SQLite has not rolled back by itself (it does where the disk is full), so that the reason is not lost.
 */
class RecordsDriver extends SqliteDriver {
  private readonly database: Database;

  constructor(database: Database) {
    super({ database });
    this.database = database;
  }

  override async beginTransaction(connection: DatabaseConnection, settings?: TransactionSettings): Promise<void> {
    const begin = settings?.accessMode === "read only" ? "begin" : "begin immediate";
    await connection.executeQuery(CompiledQuery.raw(begin));
  }

  override async rollbackTransaction(connection: DatabaseConnection): Promise<void> {
    if (this.database.inTransaction) await super.rollbackTransaction(connection);
  }
}

/** SQLite as the query layer sees it. */
export class RecordsSqliteDialect extends SqliteDialect {
  private readonly database: Database;

  constructor(database: Database) {
    super({ database });
    this.database = database;
  }

  override createDriver(): Driver {
    return new RecordsDriver(this.database);
  }
}
