import { createHash, randomUUID } from "node:crypto";
import { mkdir, open, readdir, readFile, rm, stat } from "node:fs/promises";
import { dirname, join } from "node:path";
import type { PhotoStore } from "#casework";
import { isAbsent, putInPlace, syncFolder } from "../durable-files.ts";
import { type PhotoKind, tellingBytes, tellPhoto } from "./photo-kind.ts";
import { largestPhotoBytes, notAPhoto, phoneFormat, photoTooLarge, photoTrouble } from "./photo-trouble.ts";

/** A photo that is kept. */
export interface KeptPhoto {
  /** SHA-256 of its bytes, hexadecimal. */
  readonly hash: string;
  readonly kind: PhotoKind;
  readonly bytes: number;
}

const hashPattern = /^[0-9a-f]{64}$/;
/** Folder of photos that are still arriving. */
const incoming = "incoming";

/** Photos as files named by the SHA-256 of their bytes, in folders named by its first two digits. */
export class PhotoFiles implements PhotoStore {
  private readonly folder: string;
  private ready: Promise<void> | null = null;

  constructor(folder: string) {
    this.folder = folder;
  }

  async savePhoto(bytes: Uint8Array): Promise<string> {
    const one = async function* (): AsyncGenerator<Uint8Array> {
      yield bytes;
    };
    return (await this.receivePhoto(one())).hash;
  }

  /**
   * Keeps a photo that arrives in pieces, whole or not at all; never more than the largest photo is held on the disk,
   * and what turns out to be no photo is turned away at its first bytes. Throws a RecordsTrouble where it is not kept.
   */
  async receivePhoto(pieces: AsyncIterable<Uint8Array>): Promise<KeptPhoto> {
    try {
      this.ready ??= this.makeReady();
      await this.ready;
      const half = join(this.folder, incoming, `${process.pid}-${randomUUID()}`);
      try {
        const photo = await writePieces(half, pieces);
        await this.keep(half, photo.hash);
        return photo;
      } finally {
        await rm(half, { force: true });
      }
    } catch (problem) {
      this.ready = null;
      throw photoTrouble(problem) ?? problem;
    }
  }

  async loadPhoto(hash: string): Promise<Uint8Array | null> {
    if (!hashPattern.test(hash)) return null;
    try {
      return await readFile(this.pathOf(hash));
    } catch (problem) {
      if (isAbsent(problem)) return null;
      throw photoTrouble(problem) ?? problem;
    }
  }

  async hasPhoto(hash: string): Promise<boolean> {
    if (!hashPattern.test(hash)) return false;
    try {
      return (await stat(this.pathOf(hash))).isFile();
    } catch (problem) {
      if (isAbsent(problem)) return false;
      throw photoTrouble(problem) ?? problem;
    }
  }

  /** Hashes of all photos, in their order. */
  async listPhotos(): Promise<readonly string[]> {
    const hashes: string[] = [];
    for (const part of (await namesIn(this.folder)).filter((name) => /^[0-9a-f]{2}$/.test(name))) {
      const names = await namesIn(join(this.folder, part));
      hashes.push(...names.filter((name) => hashPattern.test(name) && name.startsWith(part)));
    }
    return hashes.toSorted();
  }

  private async keep(half: string, hash: string): Promise<void> {
    if (await this.hasPhoto(hash)) return;
    const folder = join(this.folder, hash.slice(0, 2));
    if ((await mkdir(folder, { recursive: true })) !== undefined) await syncFolder(this.folder);
    await putInPlace(half, this.pathOf(hash));
  }

  /** Makes the folders and clears what killed processes left unfinished. */
  private async makeReady(): Promise<void> {
    const folder = join(this.folder, incoming);
    if ((await mkdir(folder, { recursive: true })) !== undefined) {
      await syncFolder(dirname(this.folder));
      await syncFolder(this.folder);
    }
    const left = (await readdir(folder)).filter((name) => !isRunning(Number.parseInt(name, 10)));
    for (const name of left) await rm(join(folder, name), { force: true });
  }

  private pathOf(hash: string): string {
    return join(this.folder, hash.slice(0, 2), hash);
  }
}

/** True where a process with this number runs on this machine. */
const isRunning = (pid: number): boolean => {
  try {
    return process.kill(pid, 0);
  } catch (problem) {
    return problem instanceof Error && "code" in problem && problem.code === "EPERM";
  }
};

/** Writes pieces to a new file and brings them to the disk, counting, hashing and telling what they are on the way. */
const writePieces = async (path: string, pieces: AsyncIterable<Uint8Array>): Promise<KeptPhoto> => {
  const sha = createHash("sha256");
  let bytes = 0;
  let first: Uint8Array = new Uint8Array();
  let kind: PhotoKind | null = null;
  const handle = await open(path, "wx");
  try {
    for await (const piece of pieces) {
      bytes += piece.length;
      if (bytes > largestPhotoBytes) throw photoTooLarge("a photo that goes on beyond what is kept");
      if (kind === null) {
        first = Buffer.concat([first, piece.subarray(0, tellingBytes)]);
        if (first.length >= tellingBytes) kind = demandPhoto(first);
      }
      sha.update(piece);
      await handle.writeFile(piece);
    }
    if (kind === null) throw notAPhoto(bytes === 0 ? "nothing" : `${bytes} bytes`);
    await handle.sync();
  } finally {
    await handle.close();
  }
  return { hash: sha.digest("hex"), kind, bytes };
};

const demandPhoto = (first: Uint8Array): PhotoKind => {
  const { kind } = tellPhoto(first);
  if (kind === "heic") throw phoneFormat();
  if (kind === "no-photo") throw notAPhoto(describeFirst(first));
  return kind;
};

const describeFirst = (bytes: Uint8Array): string => {
  const shown = bytes.subarray(0, 8);
  const isText = shown.every((byte) => byte >= 32 && byte < 127);
  return isText
    ? `bytes that begin with "${String.fromCharCode(...shown)}"`
    : `bytes that begin with ${Buffer.from(shown).toString("hex")}`;
};

const namesIn = async (folder: string): Promise<readonly string[]> => {
  try {
    return await readdir(folder);
  } catch (problem) {
    if (isAbsent(problem)) return [];
    throw photoTrouble(problem) ?? problem;
  }
};
