import { mkdir, readdir } from "node:fs/promises";
import Sqlite from "better-sqlite3";
import { databaseFile } from "../data-folder.ts";
import { syncFolder } from "../durable-files.ts";
import { openFamilyFiles } from "../family-files.ts";
import { openRecords } from "../open-records.ts";
import { saveManifest } from "./backup-manifest.ts";
import { folderNotEmpty } from "./backup-trouble.ts";
import { hashFile, hashOf } from "./file-hash.ts";
import { copyPhotos } from "./photo-copies.ts";
import { countRows, type Told, verifyBackup } from "./verify-backup.ts";

/** What a backup or a restore came to. */
export interface BackupReport {
  readonly documents: number;
  readonly looks: number;
  readonly photos: number;
  readonly families: number;
  /** Photos whose bytes are not those their name says; they are left out. */
  readonly damagedPhotos: readonly string[];
}

/** Makes the copy one file that needs no log beside it. */
const settleCopy = (path: string): void => {
  const copy = new Sqlite(path);
  try {
    copy.pragma("journal_mode = delete");
  } finally {
    copy.close();
  }
};

const copyFamilies = async (from: string, to: string): Promise<Readonly<Record<string, string>>> => {
  const source = await openFamilyFiles(from);
  const target = await openFamilyFiles(to);
  const hashes: Record<string, string> = {};
  for (const { id, text } of await source.list()) {
    await target.save(id, text, null);
    hashes[id] = hashOf(text);
  }
  return hashes;
};

/**
 * Copies the records, photos and families of a data folder into an empty folder, also while the program runs: the
 * database as it stands at one moment, read through row by row afterwards, and the photos, each checked against its
 * name. The manifest is written last. Throws a RecordsTrouble where the folder is not empty or the copy is not whole.
 */
export const saveBackup = async (data: string, to: string, madeAt: string, told: Told): Promise<BackupReport> => {
  await mkdir(to, { recursive: true });
  if ((await readdir(to)).length > 0) {
    throw folderNotEmpty("a folder for the backup", "Name a folder that is not there yet, such as one with the date.");
  }
  const records = await openRecords(data);
  try {
    await records.copyDatabase(databaseFile(to), (done, of) => told("database pages", done, of));
    settleCopy(databaseFile(to));
    const counts = countRows(databaseFile(to));
    const hashes = await records.photos.listPhotos();
    const damagedPhotos = await copyPhotos(records.photos, hashes, to, (done) => told("photos", done, hashes.length));
    const families = await copyFamilies(data, to);
    const photos = hashes.filter((hash) => !damagedPhotos.includes(hash));
    await syncFolder(to);
    const database_sha256 = await hashFile(databaseFile(to));
    await saveManifest(to, { underbench_backup: 1, made_at: madeAt, ...counts, database_sha256, photos, families });
    await verifyBackup(to, told);
    return { ...counts, photos: photos.length, families: Object.keys(families).length, damagedPhotos };
  } finally {
    await records.close();
  }
};
