import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import Sqlite from "better-sqlite3";
import { beforeAll, describe, expect, it } from "vitest";
import type { StoredDocument, StoredLook } from "#casework";
import { openRecords, RecordsTrouble, salvageRecords } from "#records";
import { makeFolder } from "./data-folders.ts";
import { inventedCar, makeLook, receivedAt, seededNumbers } from "./made-cases.ts";

const seed = 4711;
const cuts = 50;
const looksMade = 600;

/** The pages a look needs to be read: its leaf, those above it, and those its long note runs over to. */
type PagesOf = ReadonlyMap<number, readonly number[]>;

interface StatRow {
  readonly path: string;
  readonly pageno: number;
  readonly pagetype: "internal" | "leaf" | "overflow";
  readonly ncell: number;
}

/** Which pages each look lies on, from SQLite's own account of its pages. */
const findPages = (path: string): PagesOf => {
  const database = new Sqlite(path, { readonly: true });
  const rows = database.prepare("select * from dbstat where name = 'look' order by path").all() as StatRow[];
  const sequences = database.prepare("select sequence from look order by sequence").pluck().all() as number[];
  database.close();
  const pageAt = new Map(rows.map(({ path: at, pageno }) => [at, pageno]));
  const leaves = rows.filter(({ pagetype }) => pagetype === "leaf");
  const pages = new Map<number, readonly number[]>();
  let next = 0;
  for (const leaf of leaves) {
    const steps = leaf.path.split("/").slice(1, -1);
    const above = steps.map(
      (_, depth) =>
        pageAt.get(
          `/${steps
            .slice(0, depth)
            .map((step) => `${step}/`)
            .join("")}`,
        ) ?? 0,
    );
    for (let cell = 0; cell < leaf.ncell; cell++) {
      const start = `${leaf.path}${cell.toString(16).padStart(3, "0")}+`;
      const overflow = rows.filter(({ path: at }) => at.startsWith(start)).map(({ pageno }) => pageno);
      pages.set(sequences[next] ?? 0, [...above, leaf.pageno, ...overflow]);
      next++;
    }
  }
  return pages;
};

const openAndLoad = async (folder: string): Promise<readonly StoredLook[] | string> => {
  try {
    const records = await openRecords(folder);
    const looks = await records.cases.loadLooks({ car: "car-1" });
    await records.close();
    return looks;
  } catch (problem) {
    if (problem instanceof RecordsTrouble) return problem.finding.code;
    throw problem;
  }
};

const salvage = async (folder: string) => {
  const documents: StoredDocument[] = [];
  const looks: StoredLook[] = [];
  try {
    const report = await salvageRecords(folder, {
      document: async (document) => void documents.push(document),
      look: async (look) => void looks.push(look),
    });
    return { documents, looks, report };
  } catch (problem) {
    if (problem instanceof RecordsTrouble) return { documents, looks, report: null };
    throw problem;
  }
};

describe("a database file that is not whole", { timeout: 120_000 }, () => {
  let file: Buffer;
  let acknowledged: readonly StoredLook[];
  let pages: PagesOf;
  let pageSize: number;

  beforeAll(async () => {
    const folder = makeFolder();
    const records = await openRecords(folder);
    await records.cases.saveDocument("car", "car-1", inventedCar, { expectedVersion: 0, by: "MK", at: receivedAt });
    for (let n = 0; n < looksMade; n += 3) {
      await records.cases.appendLooks([makeLook(n), makeLook(n + 1), makeLook(n + 2)], receivedAt);
    }
    acknowledged = await records.cases.loadLooks({ car: "car-1" });
    await records.close();
    const path = join(folder, "records.db");
    file = readFileSync(path);
    pages = findPages(path);
    pageSize = file.readUInt16BE(16);
  });

  const withFile = (bytes: Buffer): string => {
    const folder = makeFolder();
    writeFileSync(join(folder, "records.db"), bytes);
    return folder;
  };

  it("knows on which pages its looks lie", () => {
    expect(pages.size).toBe(looksMade);
    expect([...pages.values()].some((list) => list.length >= 4)).toBe(true);
    expect([...pages.values()].flat().filter((page) => page === 0)).toEqual([]);
  });

  it("is refused and left as it is wherever it is cut, or it is opened with every look", async () => {
    const random = seededNumbers(seed);
    const places = Array.from({ length: cuts }, () => 1 + Math.floor(random() * (file.length - 1)));
    for (const place of [1, 99, 511, 512, pageSize, 2 * pageSize, file.length - 1, ...places]) {
      const cut = file.subarray(0, place);
      const folder = withFile(cut);
      const came = await openAndLoad(folder);
      if (came === "records-damaged") expect(readFileSync(join(folder, "records.db")).equals(cut)).toBe(true);
      else expect(came, `cut at ${place}`).toEqual(acknowledged);
    }
  });

  it("gives out every look all of whose pages are there, each whole, and none besides", async () => {
    const random = seededNumbers(seed + 1);
    const byId = new Map(acknowledged.map((look) => [look.id, look]));
    for (let round = 0; round < cuts; round++) {
      const place = pageSize + Math.floor(random() * (file.length - pageSize));
      const folder = withFile(file.subarray(0, place));
      const { looks } = await salvage(folder);
      for (const look of looks) expect(look).toEqual(byId.get(look.id));
      const came = new Set(looks.map(({ sequence }) => sequence));
      expect(came.size).toBe(looks.length);
      const there = acknowledged.filter(({ sequence }) =>
        pages.get(sequence)?.every((page) => page * pageSize <= place),
      );
      expect(
        there.filter(({ sequence }) => !came.has(sequence)),
        `cut at ${place}`,
      ).toEqual([]);
    }
  });

  it("gives out everything but what lies on a page that was overwritten, and says how much is lost", async () => {
    const random = seededNumbers(seed + 2);
    for (let round = 0; round < 30; round++) {
      const page = 2 + Math.floor(random() * (file.length / pageSize - 2));
      const bytes = Buffer.from(file);
      bytes.fill(Math.floor(random() * 256), (page - 1) * pageSize, page * pageSize);
      const folder = withFile(bytes);
      const { looks, report } = await salvage(folder);
      for (const look of looks) expect(look).toEqual(acknowledged[look.sequence - 1]);
      const came = new Set(looks.map(({ sequence }) => sequence));
      const untouched = acknowledged.filter(({ sequence }) => !pages.get(sequence)?.includes(page));
      expect(
        untouched.filter(({ sequence }) => !came.has(sequence)),
        `page ${page}`,
      ).toEqual([]);
      if (report !== null && report.lostLooks !== null) expect(report.lostLooks).toBe(looksMade - looks.length);
      const opened = await openAndLoad(folder);
      if (typeof opened !== "string")
        expect(opened.every((look) => acknowledged.some(({ id }) => id === look.id))).toBe(true);
    }
  });
});
