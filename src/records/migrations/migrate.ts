import type { Kysely } from "kysely";
import { RecordsTrouble } from "../records-trouble.ts";
import type { Tables } from "../tables.ts";
import type { Migration } from "./migration.ts";

/** Said of a database a newer program has been at. */
export const newerSchemaTrouble = (found: number, known: number): RecordsTrouble =>
  new RecordsTrouble({
    code: "records-newer",
    path: "",
    got: `records of version ${found}`,
    needed: `records of version ${known} or older, the newest this program knows`,
    hint: "Start the newer program that wrote them, or point DATA_DIR at another folder. Nothing was changed.",
  });

const appliedSchema = async (db: Kysely<Tables>): Promise<number> => {
  const row = await db
    .selectFrom("schema_version")
    .select(({ fn }) => fn.max("number").as("number"))
    .executeTakeFirst();
  return Number(row?.number ?? 0);
};

/**
 * Brings a database to the newest schema, each step whole or not at all.
 * @returns the number it stands at; throws a RecordsTrouble where the database is newer than the program.
 */
export const migrate = async (db: Kysely<Tables>, migrations: readonly Migration[]): Promise<number> => {
  await db.schema
    .createTable("schema_version")
    .ifNotExists()
    .addColumn("number", "integer", (column) => column.primaryKey())
    .addColumn("name", "text", (column) => column.notNull())
    .execute();
  const found = await appliedSchema(db);
  if (found > migrations.length) throw newerSchemaTrouble(found, migrations.length);
  for (const { number, name, add } of migrations.slice(found)) {
    await db.transaction().execute(async (step) => {
      if ((await appliedSchema(step)) >= number) return;
      await add(step);
      await step.insertInto("schema_version").values({ number, name }).execute();
    });
  }
  return migrations.length;
};
