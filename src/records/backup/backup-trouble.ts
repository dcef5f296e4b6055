import { RecordsTrouble } from "../records-trouble.ts";

/** Said of a folder that should be empty and is not. */
export const folderNotEmpty = (what: string, hint: string): RecordsTrouble =>
  new RecordsTrouble({
    code: "folder-not-empty",
    path: "",
    got: `${what} with something in it`,
    needed: "an empty folder, or one that is not there yet",
    hint,
  });

/** Said of a folder that is no finished backup. */
export const notABackup = (got: string): RecordsTrouble =>
  new RecordsTrouble({
    code: "not-a-backup",
    path: "",
    got,
    needed: "a folder underbench backup has finished, with backup.json in it",
    hint: "A backup that was broken off has no backup.json; take an older one.",
  });

/** Said of a backup that is not as it was made. */
export const backupDamaged = (got: string): RecordsTrouble =>
  new RecordsTrouble({
    code: "backup-damaged",
    path: "",
    got,
    needed: "the backup as it was made",
    hint: "Nothing was restored. Take another backup, or another copy of this one.",
  });
