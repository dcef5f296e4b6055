import { join } from "node:path";

/** Where things lie in a data folder; docs/method/records.md describes it. */
export const databaseFile = (folder: string): string => join(folder, "records.db");
/** Folder of photos in a data folder. */
export const photoFolder = (folder: string): string => join(folder, "photos");
/** What names a family's file in a data folder. */
export const familyEnding = ".family.json";
/** Lies in a data folder while a backup is being restored into it; nothing is opened before it is gone. */
export const restoringMark = (folder: string): string => join(folder, "restoring");
