import { existsSync } from "node:fs";
import { mkdir } from "node:fs/promises";
import type { CaseStore } from "#casework";
import { ArchiveRepository } from "./archive-repository.ts";
import { CaseRepository } from "./case-repository.ts";
import { databaseFile, photoFolder, restoringMark } from "./data-folder.ts";
import { type Durability, openSqlite, readDurability } from "./dialect/open-sqlite.ts";
import { sqliteTrouble } from "./dialect/sqlite-trouble.ts";
import { PhotoFiles } from "./photos/photo-files.ts";
import { RecordsTrouble } from "./records-trouble.ts";

/** The records of one workshop, open. */
export interface Records {
  readonly cases: CaseStore;
  readonly photos: PhotoFiles;
  readonly archive: ArchiveRepository;
  /** The settings an acknowledged write rests on, as the database says they are. */
  readonly durability: () => Durability;
  /** Copies the database, as it stands at one moment, to a new file; `told` hears how many of how many pages are copied. */
  readonly copyDatabase: (to: string, told: (done: number, of: number) => void) => Promise<void>;
  readonly close: () => Promise<void>;
}

const restoreUnfinished = (): RecordsTrouble =>
  new RecordsTrouble({
    code: "restore-unfinished",
    path: "",
    got: "a data folder into which a backup was being restored when that was broken off",
    needed: "a restore that has run to its end",
    hint: "Empty the data folder and run underbench restore again; the backup itself is untouched.",
  });

/** Pages copied between two turns of other work (4 MB of 4 kB pages). */
const pagesAtOnce = 1000;

/**
 * Opens the records of a data folder (made if it is not there). Throws a RecordsTrouble where they are damaged, of a
 * newer version, or where the disk cannot keep what is acknowledged; they are left untouched then.
 */
export const openRecords = async (folder: string): Promise<Records> => {
  if (existsSync(restoringMark(folder))) throw restoreUnfinished();
  await mkdir(folder, { recursive: true });
  const { database, db } = await openSqlite(databaseFile(folder));
  const records = { db, explain: sqliteTrouble };
  return {
    cases: new CaseRepository(records),
    photos: new PhotoFiles(photoFolder(folder)),
    archive: new ArchiveRepository(records),
    durability: () => readDurability(database),
    copyDatabase: async (to, told) => {
      try {
        await database.backup(to, {
          progress: ({ totalPages, remainingPages }) => {
            told(totalPages - remainingPages, totalPages);
            return pagesAtOnce;
          },
        });
      } catch (problem) {
        throw sqliteTrouble(problem) ?? problem;
      }
    },
    close: () => db.destroy(),
  };
};
