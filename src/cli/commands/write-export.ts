import { createHash } from "node:crypto";
import type { StoredDocument, StoredLook } from "#casework";
import { type ArchiveLine, type ArchiveTally, formatArchiveLine } from "#contract";
import { type ArchiveReader, loadWholePhoto, openFamilyFiles, PhotoFiles, photoFolder } from "#records";
import type { Told } from "./progress.ts";

/** What an export came to. */
export interface ExportReport {
  readonly tally: ArchiveTally;
  readonly damagedPhotos: readonly string[];
}

/** Where the lines of an export go. */
export type WriteLine = (line: string) => Promise<void>;

/** Reads documents and looks out of records, whole or damaged. */
export type ReadCases = (read: ArchiveReader) => Promise<unknown>;

/**
 * Writes everything of a data folder as the lines of an export: cases, families, photos, and at the end what it holds
 * with the SHA-256 of every byte before.
 */
export const writeExport = async (
  folder: string,
  readCases: ReadCases,
  write: WriteLine,
  madeAt: string,
  told: Told,
): Promise<ExportReport> => {
  const sha = createHash("sha256");
  const tally = { documents: 0, looks: 0, families: 0, photos: 0 };
  const put = async (line: ArchiveLine): Promise<void> => {
    const text = `${formatArchiveLine(line)}\n`;
    sha.update(text);
    await write(text);
  };
  await put({ kind: "header", madeAt });
  await readCases({
    document: async (document: StoredDocument) => {
      await put({ kind: "document", document });
      tally.documents++;
    },
    look: async (look: StoredLook) => {
      await put({ kind: "look", look });
      tally.looks++;
      told("looks", tally.looks, null);
    },
  });
  for (const { id, text } of await (await openFamilyFiles(folder)).list()) {
    await put({ kind: "family", id, text });
    tally.families++;
  }
  const photos = new PhotoFiles(photoFolder(folder));
  const hashes = await photos.listPhotos();
  const damagedPhotos: string[] = [];
  for (const hash of hashes) {
    const bytes = await loadWholePhoto(photos, hash);
    if (bytes === null) damagedPhotos.push(hash);
    else {
      await put({ kind: "photo", hash, bytes: bytes.length, base64: Buffer.from(bytes).toString("base64") });
      tally.photos++;
    }
    told("photos", tally.photos, hashes.length);
  }
  await write(`${formatArchiveLine({ kind: "end", tally, sha256: sha.digest("hex") })}\n`);
  return { tally, damagedPhotos };
};
