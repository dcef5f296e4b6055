import type { ArchiveReader } from "./archive-repository.ts";
import { databaseFile } from "./data-folder.ts";
import { type SalvageReport, salvageSqlite } from "./dialect/salvage-sqlite.ts";

/** Reads what is still whole out of the damaged records of a data folder; the folder is left as it is. */
export const salvageRecords = (folder: string, read: ArchiveReader): Promise<SalvageReport> =>
  salvageSqlite(databaseFile(folder), read);
