import { open, rename, rm } from "node:fs/promises";
import { dirname } from "node:path";

/** True where a file or folder was asked for that is not there. */
export const isAbsent = (problem: unknown): boolean =>
  problem instanceof Error && "code" in problem && problem.code === "ENOENT";

/** Brings a folder's entries to the disk, so that a rename in it outlives a power cut. */
export const syncFolder = async (folder: string): Promise<void> => {
  const handle = await open(folder, "r");
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
};

/** Puts a finished file under its name and brings both to the disk; what was finished is removed where that fails. */
export const putInPlace = async (finished: string, place: string): Promise<void> => {
  try {
    await rename(finished, place);
  } catch (problem) {
    await rm(finished, { force: true });
    throw problem;
  }
  await syncFolder(dirname(place));
};

/** Writes a whole file beside its place (at `half`), brings it to the disk and only then puts it there under its name. */
export const writeWholeFile = async (half: string, place: string, content: string | Uint8Array): Promise<void> => {
  const handle = await open(half, "wx");
  try {
    await handle.writeFile(content);
    await handle.sync();
  } catch (problem) {
    await rm(half, { force: true });
    throw problem;
  } finally {
    await handle.close();
  }
  await putInPlace(half, place);
};
