import type { Kysely } from "kysely";
import type { Tables } from "../tables.ts";
import type { Migration } from "./migration.ts";

const addDocuments = async (db: Kysely<Tables>): Promise<void> => {
  await db.schema
    .createTable("document")
    .addColumn("kind", "text", (column) => column.notNull())
    .addColumn("id", "text", (column) => column.notNull())
    .addColumn("version", "integer", (column) => column.notNull())
    .addColumn("car", "text")
    .addColumn("day", "text")
    .addPrimaryKeyConstraint("document_key", ["kind", "id"])
    .execute();
  await db.schema.createIndex("document_by_car").on("document").columns(["car", "day"]).execute();
  await db.schema
    .createTable("document_version")
    .addColumn("kind", "text", (column) => column.notNull())
    .addColumn("id", "text", (column) => column.notNull())
    .addColumn("version", "integer", (column) => column.notNull())
    .addColumn("body", "text", (column) => column.notNull())
    .addColumn("saved_by", "text", (column) => column.notNull())
    .addColumn("saved_at", "text", (column) => column.notNull())
    .addColumn("digest", "text", (column) => column.notNull())
    .addPrimaryKeyConstraint("document_version_key", ["kind", "id", "version"])
    .addForeignKeyConstraint("document_version_of", ["kind", "id"], "document", ["kind", "id"])
    .execute();
};

const addLooks = async (db: Kysely<Tables>): Promise<void> => {
  await db.schema
    .createTable("look")
    .addColumn("sequence", "integer", (column) => column.primaryKey())
    .addColumn("id", "text", (column) => column.notNull().unique())
    .addColumn("car", "text", (column) => column.notNull())
    .addColumn("visit", "text", (column) => column.notNull())
    .addColumn("place", "text", (column) => column.notNull())
    .addColumn("kind", "text", (column) => column.notNull())
    .addColumn("quantity", "text")
    .addColumn("value_si", "double precision")
    .addColumn("u_si", "double precision")
    .addColumn("point", "text")
    .addColumn("signs", "text")
    .addColumn("withdrawn", "text")
    .addColumn("load_state", "text")
    .addColumn("instrument", "text")
    .addColumn("photo", "text")
    .addColumn("note", "text")
    .addColumn("who", "text", (column) => column.notNull())
    .addColumn("looked_at", "text", (column) => column.notNull())
    .addColumn("received_at", "text", (column) => column.notNull())
    .addColumn("clock_off", "integer", (column) => column.notNull())
    .addColumn("digest", "text", (column) => column.notNull())
    .execute();
  await db.schema.createIndex("look_by_visit").on("look").columns(["visit", "sequence"]).execute();
  await db.schema.createIndex("look_by_car").on("look").columns(["car", "sequence"]).execute();
};

/** Documents with all their versions, and looks. */
export const cases: Migration = {
  number: 1,
  name: "cases",
  add: async (db) => {
    await db.schema
      .createTable("counter")
      .addColumn("name", "text", (column) => column.primaryKey())
      .addColumn("value", "integer", (column) => column.notNull())
      .execute();
    await db.insertInto("counter").values({ name: "look", value: 0 }).execute();
    await addDocuments(db);
    await addLooks(db);
  },
};
