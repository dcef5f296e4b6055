export {
  type ArchiveClash,
  type ArchiveContent,
  type ArchiveCounts,
  type ArchiveOutcome,
  type ArchiveReader,
  ArchiveRepository,
} from "./archive-repository.ts";
export { loadWholePhoto } from "./backup/photo-copies.ts";
export { restoreBackup } from "./backup/restore-backup.ts";
export { type BackupReport, saveBackup } from "./backup/save-backup.ts";
export type { Told } from "./backup/verify-backup.ts";
export { photoFolder } from "./data-folder.ts";
export type { SalvageReport } from "./dialect/salvage-sqlite.ts";
export { openFamilyFiles } from "./family-files.ts";
export { openRecords, type Records } from "./open-records.ts";
export { type KeptPhoto, PhotoFiles } from "./photos/photo-files.ts";
export { type PhotoKind, tellPhoto } from "./photos/photo-kind.ts";
export { photoTooLarge } from "./photos/photo-trouble.ts";
export { type RecordsFinding, RecordsTrouble } from "./records-trouble.ts";
export { salvageRecords } from "./salvage-records.ts";
