import { mkdirSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Database } from "better-sqlite3";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { CaseStore, LookOutcome } from "#casework";
import { PhotoFiles, RecordsTrouble } from "#records";
import { CaseRepository } from "../../src/records/case-repository.ts";
import { openSqlite } from "../../src/records/dialect/open-sqlite.ts";
import { sqliteTrouble } from "../../src/records/dialect/sqlite-trouble.ts";
import { makeFolder } from "./data-folders.ts";
import { inventedCar, makeLook, receivedAt, seededNumbers } from "./made-cases.ts";
import { pngOf } from "./made-photos.ts";

const seed = 99;

/** The finding a promise is refused with. */
const refusal = async (run: Promise<unknown>) => {
  const problem: unknown = await run.then(
    () => null,
    (thrown: unknown) => thrown,
  );
  if (problem instanceof RecordsTrouble) return problem.finding;
  throw problem ?? new Error("Nothing was refused.");
};

describe("a disk that is full", () => {
  let database: Database;
  let cases: CaseStore;
  let close: () => Promise<void>;

  beforeEach(async () => {
    const opened = await openSqlite(join(makeFolder(), "records.db"));
    database = opened.database;
    cases = new CaseRepository({ db: opened.db, explain: sqliteTrouble });
    close = () => opened.db.destroy();
  });
  afterEach(() => close());

  const leavePages = (pages: number): void => {
    const used = database.pragma("page_count", { simple: true }) as number;
    database.pragma(`max_page_count = ${used + pages}`);
  };
  const makeSpace = (): void => void database.pragma("max_page_count = 1000000");

  const storedIn = (outcomes: readonly LookOutcome[]): readonly unknown[] =>
    outcomes.flatMap((outcome) => ("stored" in outcome ? [outcome.stored] : []));

  it("refuses what does not fit, keeps what was kept, and goes on without a gap when there is space", async () => {
    const random = seededNumbers(seed);
    const kept: unknown[] = [];
    let next = 0;
    for (let round = 0; round < 20; round++) {
      leavePages(Math.floor(random() * 12));
      let full = false;
      while (!full) {
        const batch = Array.from({ length: 1 + Math.floor(random() * 6) }, () => {
          next++;
          return makeLook(next);
        });
        try {
          kept.push(...storedIn(await cases.appendLooks(batch, receivedAt)));
        } catch (problem) {
          full = true;
          expect((problem as RecordsTrouble).finding).toMatchObject({ code: "no-space" });
          expect(await cases.loadLooks({ car: "car-1" })).toEqual(kept);
          makeSpace();
          kept.push(...storedIn(await cases.appendLooks(batch, receivedAt)));
        }
      }
      expect(await cases.loadLooks({ car: "car-1" })).toEqual(kept);
    }
    expect(kept.map((look) => (look as { sequence: number }).sequence)).toEqual(kept.map((_, index) => index + 1));
  });

  it("keeps no half of a document that does not fit", async () => {
    const meta = (expectedVersion: number) => ({ expectedVersion, by: "MK", at: receivedAt });
    await cases.saveDocument("car", "car-1", inventedCar, meta(0));
    leavePages(0);
    const long = { ...inventedCar, name: "long ".repeat(4000) };
    expect((await refusal(cases.saveDocument("car", "car-1", long, meta(1)))).code).toBe("no-space");
    expect((await refusal(cases.saveDocument("car", "car-2", long, meta(0)))).code).toBe("no-space");
    expect(await cases.loadDocument("car", "car-1")).toMatchObject({ version: 1, body: inventedCar });
    expect(await cases.loadDocument("car", "car-2")).toBeNull();
    expect(await cases.loadHistory("car", "car-1")).toHaveLength(1);
    makeSpace();
    expect(await cases.saveDocument("car", "car-1", long, meta(1))).toMatchObject({ saved: { version: 2 } });
  });

  it("takes many writers at once: each is kept whole or refused", async () => {
    leavePages(6);
    const batches = Array.from({ length: 40 }, (_, index) => [makeLook(2 * index), makeLook(2 * index + 1)]);
    const ended = await Promise.allSettled(batches.map((batch) => cases.appendLooks(batch, receivedAt)));
    const kept = new Set((await cases.loadLooks({ car: "car-1" })).map(({ id }) => id));
    for (const [index, { status }] of ended.entries()) {
      expect(batches[index]?.map(({ id }) => kept.has(id))).toEqual(Array(2).fill(status === "fulfilled"));
    }
    expect(ended.some(({ status }) => status === "rejected")).toBe(true);
    expect(ended.some(({ status }) => status === "fulfilled")).toBe(true);
  });
});

describe("a folder of photos that fails", () => {
  it("refuses the photo, leaves looks alone, and takes the photo once the folder is right", async () => {
    const folder = makeFolder();
    const { db } = await openSqlite(join(folder, "records.db"));
    const cases = new CaseRepository({ db, explain: sqliteTrouble });
    const photos = new PhotoFiles(join(folder, "photos"));
    writeFileSync(join(folder, "photos"), "a file where a folder belongs");
    expect((await refusal(photos.savePhoto(pngOf(1)))).code).toBe("photo-not-kept");
    expect(await cases.appendLooks([makeLook(1)], receivedAt)).toMatchObject([{ stored: { sequence: 1 } }]);
    rmSync(join(folder, "photos"));
    const hash = await photos.savePhoto(pngOf(1));
    expect(await photos.loadPhoto(hash)).toEqual(Buffer.from(pngOf(1)));
    await db.destroy();
  });

  it("leaves nothing behind where a photo breaks off on the way to the disk", async () => {
    const folder = makeFolder();
    const photos = new PhotoFiles(join(folder, "photos"));
    const breakingOff = async function* (): AsyncGenerator<Uint8Array> {
      yield pngOf(2).subarray(0, 20);
      throw Object.assign(new Error("no space left"), { code: "ENOSPC" });
    };
    expect((await refusal(photos.receivePhoto(breakingOff()))).code).toBe("no-space");
    expect(readdirSync(join(folder, "photos", "incoming"))).toEqual([]);
    expect(await photos.listPhotos()).toEqual([]);
  });

  it("clears what a killed program left half-written, and not what a running one is writing", async () => {
    const folder = makeFolder();
    const incoming = join(folder, "photos", "incoming");
    mkdirSync(incoming, { recursive: true });
    writeFileSync(join(incoming, "999999999-left"), "half");
    writeFileSync(join(incoming, `${process.pid}-now`), "half");
    await new PhotoFiles(join(folder, "photos")).savePhoto(pngOf(3));
    expect(readdirSync(incoming)).toEqual([`${process.pid}-now`]);
  });
});
