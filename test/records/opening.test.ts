import { copyFileSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import Sqlite from "better-sqlite3";
import { Kysely } from "kysely";
import { describe, expect, it } from "vitest";
import { openRecords, RecordsTrouble } from "#records";
import { RecordsSqliteDialect } from "../../src/records/dialect/sqlite-dialect.ts";
import { migrate } from "../../src/records/migrations/migrate.ts";
import { migrations } from "../../src/records/migrations/migrations.ts";
import type { Tables } from "../../src/records/tables.ts";
import { makeFolder } from "./data-folders.ts";
import { inventedCar, makeLook, receivedAt } from "./made-cases.ts";

/** The finding a data folder is refused with. */
const refusal = async (folder: string) => {
  try {
    await (await openRecords(folder)).close();
  } catch (problem) {
    if (problem instanceof RecordsTrouble) return problem.finding;
    throw problem;
  }
  throw new Error("The records were opened.");
};

describe("opening the records", () => {
  it("reads back the settings an acknowledged write rests on", async () => {
    const records = await openRecords(makeFolder());
    expect(records.durability()).toEqual({ journal_mode: "wal", synchronous: 2, foreign_keys: 1, busy_timeout: 5000 });
    await records.close();
  });

  it("keeps what was written from one opening to the next", async () => {
    const folder = join(makeFolder(), "new", "deep");
    const first = await openRecords(folder);
    await first.cases.appendLooks([makeLook(1)], receivedAt);
    await first.close();
    const second = await openRecords(folder);
    expect(await second.cases.loadLooks({ car: "car-1" })).toMatchObject([{ id: makeLook(1).id }]);
    await second.close();
  });

  it("refuses records of a newer version, says which, and leaves every byte as it was", async () => {
    const folder = makeFolder();
    await (await openRecords(folder)).close();
    const path = join(folder, "records.db");
    const database = new Sqlite(path);
    database.exec("insert into schema_version (number, name) values (7, 'of tomorrow')");
    database.close();
    const before = readFileSync(path);
    expect(await refusal(folder)).toMatchObject({
      code: "records-newer",
      got: "records of version 7",
      needed: expect.stringContaining(`version ${migrations.length} or older`),
    });
    expect(readFileSync(path).equals(before)).toBe(true);
  });

  it("refuses the database of another program and leaves it alone", async () => {
    const folder = makeFolder();
    const path = join(folder, "records.db");
    const database = new Sqlite(path);
    database.exec("create table recipe (name text)");
    database.close();
    const before = readFileSync(path);
    expect((await refusal(folder)).code).toBe("records-foreign");
    expect(readFileSync(path).equals(before)).toBe(true);
  });

  it.each([
    ["text", "these are not the records\n".repeat(500)],
    ["one byte", "S"],
    ["a header and nothing", "SQLite format 3\u0000"],
  ])("refuses %s in place of a database", async (_, content) => {
    const folder = makeFolder();
    writeFileSync(join(folder, "records.db"), content);
    expect((await refusal(folder)).code).toBe("records-damaged");
    expect(readFileSync(join(folder, "records.db"), "utf8")).toBe(content);
  });

  it("refuses a write-ahead log whose database is gone, which SQLite would throw away", async () => {
    const folder = makeFolder();
    const copy = makeFolder();
    const records = await openRecords(folder);
    await records.cases.appendLooks([makeLook(1)], receivedAt);
    copyFileSync(join(folder, "records.db-wal"), join(copy, "records.db-wal"));
    await records.close();
    const log = readFileSync(join(copy, "records.db-wal"));
    expect((await refusal(copy)).code).toBe("records-damaged");
    expect(readFileSync(join(copy, "records.db-wal")).equals(log)).toBe(true);
  });

  it("refuses a folder where a database cannot be", async () => {
    const folder = makeFolder();
    mkdirSync(join(folder, "records.db"));
    expect((await refusal(folder)).code).toBe("records-not-writable");
  });

  it("refuses a folder in which a restore was broken off", async () => {
    const folder = makeFolder();
    writeFileSync(join(folder, "restoring"), "");
    expect((await refusal(folder)).code).toBe("restore-unfinished");
  });

  it("knows a changed byte inside a look when it reads a file that is not as long as it should be", async () => {
    const folder = makeFolder();
    const records = await openRecords(folder);
    await records.cases.saveDocument("car", "car-1", inventedCar, { expectedVersion: 0, by: "MK", at: receivedAt });
    await records.cases.appendLooks([makeLook(1, { note: "a note nobody else has" })], receivedAt);
    await records.close();
    const path = join(folder, "records.db");
    const bytes = readFileSync(path);
    bytes.write("A", bytes.indexOf("a note nobody else has"));
    writeFileSync(path, Buffer.concat([bytes, Buffer.from("x")]));
    expect(await refusal(folder)).toMatchObject({ code: "records-damaged", got: expect.stringContaining("look") });
  });
});

type Schema = Readonly<Record<string, Readonly<Record<string, string>>>>;

const schemaOf = (database: Sqlite.Database): Schema => {
  const names = database
    .prepare("select name from sqlite_master where type = 'table' order by name")
    .pluck()
    .all() as string[];
  const columnsOf = (table: string) =>
    (database.pragma(`table_info(${table})`) as { name: string; type: string; notnull: number; pk: number }[]).map(
      ({ name, type, notnull, pk }) => [name, `${type}${notnull ? " not null" : ""}${pk ? ` key ${pk}` : ""}`],
    );
  return Object.fromEntries(
    names.map((table) => [table, Object.fromEntries(columnsOf(table)) as Record<string, string>]),
  );
};

const schemaAfter = async (count: number): Promise<Schema> => {
  const database = new Sqlite(":memory:");
  const db = new Kysely<Tables>({ dialect: new RecordsSqliteDialect(database) });
  await migrate(db, migrations.slice(0, count));
  const schema = schemaOf(database);
  await db.destroy();
  return schema;
};

describe("migrations", () => {
  it("are numbered without a gap", () => {
    expect(migrations.map(({ number }) => number)).toEqual(migrations.map((_, index) => index + 1));
  });

  it.each(migrations.map(({ number }) => number))("number %i gives the schema it was released with", async (number) => {
    const file = new URL(`schema-after-${String(number).padStart(3, "0")}.json`, import.meta.url);
    expect(await schemaAfter(number)).toEqual(JSON.parse(readFileSync(fileURLToPath(file), "utf8")));
  });

  it("only ever add: every table and column stays as it was", async () => {
    for (const { number } of migrations) {
      const [before, after] = [await schemaAfter(number - 1), await schemaAfter(number)];
      for (const [table, columns] of Object.entries(before)) expect(after[table]).toMatchObject(columns);
    }
  });
});
