import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { isAbsent, writeWholeFile } from "../durable-files.ts";
import { notABackup } from "./backup-trouble.ts";

/** What a backup holds; written last, so that a backup without it is known to be unfinished. */
export interface BackupManifest {
  readonly underbench_backup: 1;
  readonly made_at: string;
  readonly documents: number;
  readonly looks: number;
  readonly database_sha256: string;
  /** Hashes of the photos, which are their names too. */
  readonly photos: readonly string[];
  /** SHA-256 of each family's text, by its id. */
  readonly families: Readonly<Record<string, string>>;
}

const manifestName = "backup.json";

/** Writes the manifest, after everything it speaks of is on the disk. */
export const saveManifest = (folder: string, manifest: BackupManifest): Promise<void> =>
  writeWholeFile(
    join(folder, `.${manifestName}.part`),
    join(folder, manifestName),
    `${JSON.stringify(manifest, null, 2)}\n`,
  );

const isCount = (value: unknown): boolean => typeof value === "number" && Number.isInteger(value) && value >= 0;
const isHash = (value: unknown): boolean => typeof value === "string" && /^[0-9a-f]{64}$/.test(value);
const isId = (value: string): boolean => /^[a-z0-9]+(-[a-z0-9]+)*$/.test(value);

const isManifest = (value: unknown): value is BackupManifest => {
  if (typeof value !== "object" || value === null) return false;
  const { underbench_backup, made_at, documents, looks, database_sha256, photos, families } = value as Record<
    string,
    unknown
  >;
  return (
    underbench_backup === 1 &&
    typeof made_at === "string" &&
    isCount(documents) &&
    isCount(looks) &&
    isHash(database_sha256) &&
    Array.isArray(photos) &&
    photos.every(isHash) &&
    typeof families === "object" &&
    families !== null &&
    Object.entries(families).every(([id, hash]) => isId(id) && isHash(hash))
  );
};

/** Reads the manifest of a backup; throws a RecordsTrouble where there is none or it is not one. */
export const loadManifest = async (folder: string): Promise<BackupManifest> => {
  let text: string;
  try {
    text = await readFile(join(folder, manifestName), "utf8");
  } catch (problem) {
    if (isAbsent(problem)) throw notABackup(`a folder without ${manifestName}`);
    throw problem;
  }
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (problem) {
    if (problem instanceof SyntaxError) throw notABackup(`a ${manifestName} that is no JSON`);
    throw problem;
  }
  if (!isManifest(value)) throw notABackup(`a ${manifestName} of another form`);
  return value;
};
