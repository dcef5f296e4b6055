import Sqlite from "better-sqlite3";
import { databaseFile, photoFolder } from "../data-folder.ts";
import { checkSqliteFile } from "../dialect/check-sqlite-file.ts";
import { openFamilyFiles } from "../family-files.ts";
import { knownSchema } from "../migrations/migrations.ts";
import { PhotoFiles } from "../photos/photo-files.ts";
import { type BackupManifest, loadManifest } from "./backup-manifest.ts";
import { backupDamaged } from "./backup-trouble.ts";
import { hashFile, hashOf } from "./file-hash.ts";
import { loadWholePhoto } from "./photo-copies.ts";

/** Hears how far long work has come. */
export type Told = (what: string, done: number, of: number) => void;

/** How many documents (all versions) and looks a database file holds. */
export const countRows = (path: string): { readonly documents: number; readonly looks: number } => {
  const database = new Sqlite(path, { readonly: true });
  try {
    const count = (table: string): number =>
      (database.prepare(`select count(*) as count from ${table}`).get() as { readonly count: number }).count;
    return { documents: count("document_version"), looks: count("look") };
  } finally {
    database.close();
  }
};

const verifyDatabase = async (folder: string, manifest: BackupManifest): Promise<void> => {
  const path = databaseFile(folder);
  const hash = await hashFile(path).catch(() => "none that can be read");
  if (hash !== manifest.database_sha256) throw backupDamaged(`a database with the SHA-256 ${hash}`);
  checkSqliteFile(path, knownSchema, true);
  const { documents, looks } = countRows(path);
  if (documents !== manifest.documents || looks !== manifest.looks) {
    throw backupDamaged(
      `${documents} documents and ${looks} looks where ${manifest.documents} and ${manifest.looks} were`,
    );
  }
};

/**
 * Reads a whole backup: the database to its last row, every photo, every family.
 * @returns its manifest; throws a RecordsTrouble where anything is not as it was made.
 */
export const verifyBackup = async (folder: string, told: Told): Promise<BackupManifest> => {
  const manifest = await loadManifest(folder);
  await verifyDatabase(folder, manifest);
  const photos = new PhotoFiles(photoFolder(folder));
  for (const [index, hash] of manifest.photos.entries()) {
    if ((await loadWholePhoto(photos, hash)) === null) throw backupDamaged(`a photo that is not whole: ${hash}`);
    told("photos checked", index + 1, manifest.photos.length);
  }
  const families = await openFamilyFiles(folder);
  for (const [id, hash] of Object.entries(manifest.families)) {
    const family = await families.load(id);
    if (family === null || hashOf(family.text) !== hash) throw backupDamaged(`a family that is not whole: ${id}`);
  }
  return manifest;
};
