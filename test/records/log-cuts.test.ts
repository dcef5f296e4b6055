import { copyFileSync, readFileSync, statSync, truncateSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import type { StoredLook } from "#casework";
import { openRecords } from "#records";
import { makeFolder } from "./data-folders.ts";
import { makeLook, receivedAt, seededNumbers } from "./made-cases.ts";

const seed = 20_310_514;
const cuts = 100;

/** What was acknowledged, and how long the log was at that moment. */
interface Acknowledged {
  readonly looks: readonly StoredLook[];
  readonly logBytes: number;
}

const append = async (folder: string, batches: readonly (readonly number[])[]): Promise<readonly Acknowledged[]> => {
  const records = await openRecords(folder);
  const acknowledged: Acknowledged[] = [];
  for (const batch of batches) {
    const outcomes = await records.cases.appendLooks(
      batch.map((n) => makeLook(n)),
      receivedAt,
    );
    const looks = outcomes.map((outcome) => {
      if (!("stored" in outcome)) throw new Error("A new look was not stored.");
      return outcome.stored;
    });
    acknowledged.push({ looks, logBytes: statSync(join(folder, "records.db-wal")).size });
  }
  for (const name of ["records.db", "records.db-wal"]) copyFileSync(join(folder, name), join(folder, `${name}.taken`));
  await records.close();
  return acknowledged;
};

/** Batches of one to four looks, numbered on from `first`. */
const makeBatches = (count: number, first: number, random: () => number): readonly (readonly number[])[] => {
  let next = first;
  return Array.from({ length: count }, () =>
    Array.from({ length: 1 + Math.floor(random() * 4) }, () => {
      next++;
      return next;
    }),
  );
};

describe("a write-ahead log cut at any byte", { timeout: 120_000 }, () => {
  it("reopens by itself with exactly the looks acknowledged up to the cut, and goes on without a gap", async () => {
    const random = seededNumbers(seed);
    const folder = makeFolder();
    const settled = (await append(folder, makeBatches(60, 0, random))).flatMap(({ looks }) => looks);
    const acknowledged = await append(folder, makeBatches(70, settled.length, random));
    const log = readFileSync(join(folder, "records.db-wal.taken"));
    expect(acknowledged.map(({ logBytes }) => logBytes)).toEqual(
      acknowledged.map(({ logBytes }) => logBytes).toSorted((one, other) => one - other),
    );
    const ends = acknowledged.filter((_, index) => index % 7 === 0).map(({ logBytes }) => logBytes);
    const places = [
      0,
      31,
      ...Array.from({ length: cuts }, () => Math.floor(random() * log.length)),
      ...ends.flatMap((end) => [end - 1, end, end + 1]),
      log.length,
    ];
    for (const place of places) {
      const copy = makeFolder();
      copyFileSync(join(folder, "records.db.taken"), join(copy, "records.db"));
      writeFileSync(join(copy, "records.db-wal"), log);
      truncateSync(join(copy, "records.db-wal"), place);
      const records = await openRecords(copy);
      const kept = await records.cases.loadLooks({ car: "car-1" });
      const promised = acknowledged.filter(({ logBytes }) => logBytes <= place).flatMap(({ looks }) => looks);
      expect(kept, `cut at ${place} of ${log.length}`).toEqual([...settled, ...promised]);
      const [next] = await records.cases.appendLooks([makeLook(1_000_000)], receivedAt);
      expect(next).toMatchObject({ stored: { sequence: kept.length + 1 } });
      await records.close();
    }
  });

  it("never takes a frame that is half there for a whole one, also where other bytes follow it", async () => {
    const random = seededNumbers(seed + 1);
    const folder = makeFolder();
    const acknowledged = await append(folder, makeBatches(40, 0, random));
    const log = readFileSync(join(folder, "records.db-wal.taken"));
    for (let round = 0; round < 40; round++) {
      const place = Math.floor(random() * log.length);
      const rest = Buffer.from(Array.from({ length: 9000 }, () => Math.floor(random() * 256)));
      const copy = makeFolder();
      copyFileSync(join(folder, "records.db.taken"), join(copy, "records.db"));
      writeFileSync(join(copy, "records.db-wal"), Buffer.concat([log.subarray(0, place), rest]));
      const records = await openRecords(copy);
      const kept = await records.cases.loadLooks({ car: "car-1" });
      const promised = acknowledged.filter(({ logBytes }) => logBytes <= place).flatMap(({ looks }) => looks);
      expect(kept, `cut at ${place} of ${log.length}, other bytes behind it`).toEqual(promised);
      await records.close();
    }
  });
});
