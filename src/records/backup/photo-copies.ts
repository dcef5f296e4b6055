import { mkdir } from "node:fs/promises";
import { join } from "node:path";
import { photoFolder } from "../data-folder.ts";
import { syncFolder, writeWholeFile } from "../durable-files.ts";
import type { PhotoFiles } from "../photos/photo-files.ts";
import { hashOf } from "./file-hash.ts";

/** The bytes of a photo, or null where they are gone or no longer those its name says. */
export const loadWholePhoto = async (photos: PhotoFiles, hash: string): Promise<Uint8Array | null> => {
  const bytes = await photos.loadPhoto(hash);
  return bytes !== null && hashOf(bytes) === hash ? bytes : null;
};

/**
 * Copies photos into the photo folder of another data folder, each read whole and checked against its name.
 * @returns the hashes of those that are damaged; they are left out.
 */
export const copyPhotos = async (
  photos: PhotoFiles,
  hashes: readonly string[],
  to: string,
  told: (done: number) => void,
): Promise<readonly string[]> => {
  const damaged: string[] = [];
  for (const [index, hash] of hashes.entries()) {
    const bytes = await loadWholePhoto(photos, hash);
    if (bytes === null) damaged.push(hash);
    else {
      const folder = join(photoFolder(to), hash.slice(0, 2));
      await mkdir(folder, { recursive: true });
      await writeWholeFile(join(folder, `.${hash}.part`), join(folder, hash), bytes);
    }
    told(index + 1);
  }
  if (hashes.length > 0) await syncFolder(photoFolder(to));
  return damaged;
};
