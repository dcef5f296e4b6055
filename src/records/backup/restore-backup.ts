import { copyFile, mkdir, open, readdir, rm, writeFile } from "node:fs/promises";
import { databaseFile, photoFolder, restoringMark } from "../data-folder.ts";
import { isAbsent, putInPlace, syncFolder } from "../durable-files.ts";
import { openFamilyFiles } from "../family-files.ts";
import { openRecords } from "../open-records.ts";
import { PhotoFiles } from "../photos/photo-files.ts";
import { backupDamaged, folderNotEmpty } from "./backup-trouble.ts";
import { copyPhotos } from "./photo-copies.ts";
import type { BackupReport } from "./save-backup.ts";
import { type Told, verifyBackup } from "./verify-backup.ts";

const demandEmpty = async (folder: string): Promise<void> => {
  const names = await readdir(folder).catch((problem: unknown) => {
    if (isAbsent(problem)) return [];
    throw problem;
  });
  if (names.length === 0) return;
  throw folderNotEmpty(
    "a data folder",
    "Nothing was restored. Point DATA_DIR at an empty folder, or move what lies there away first.",
  );
};

const copyWhole = async (from: string, to: string): Promise<void> => {
  const half = `${to}.part`;
  await copyFile(from, half);
  const handle = await open(half, "r+");
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
  await putInPlace(half, to);
};

const copyFamilies = async (from: string, to: string, ids: readonly string[]): Promise<void> => {
  const source = await openFamilyFiles(from);
  const target = await openFamilyFiles(to);
  for (const id of ids) {
    const family = await source.load(id);
    if (family === null) throw backupDamaged(`a family that is gone: ${id}`);
    await target.save(id, family.text, null);
  }
};

/**
 * Puts a backup into an empty data folder. The backup is read whole before anything is written, the copy is opened
 * and counted afterwards; while it runs a mark lies in the folder, so that a restore that was broken off is not taken
 * for records. Throws a RecordsTrouble where the folder is not empty or the backup is not whole.
 */
export const restoreBackup = async (backup: string, data: string, told: Told): Promise<BackupReport> => {
  await demandEmpty(data);
  const manifest = await verifyBackup(backup, told);
  await mkdir(data, { recursive: true });
  await writeFile(restoringMark(data), "", { flag: "wx", flush: true });
  await syncFolder(data);
  const source = new PhotoFiles(photoFolder(backup));
  const damagedPhotos = await copyPhotos(source, manifest.photos, data, (done) =>
    told("photos", done, manifest.photos.length),
  );
  await copyFamilies(backup, data, Object.keys(manifest.families));
  await copyWhole(databaseFile(backup), databaseFile(data));
  if (damagedPhotos.length > 0) throw backupDamaged(`a photo that changed while it was copied: ${damagedPhotos[0]}`);
  await rm(restoringMark(data));
  await syncFolder(data);
  const records = await openRecords(data);
  try {
    const { documents, looks } = await records.archive.counts();
    if (documents !== manifest.documents || looks !== manifest.looks) throw backupDamaged("a copy with other counts");
    return {
      documents,
      looks,
      photos: manifest.photos.length,
      families: Object.keys(manifest.families).length,
      damagedPhotos,
    };
  } finally {
    await records.close();
  }
};
