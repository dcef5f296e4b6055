import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { beforeEach, describe, expect, it } from "vitest";
import { largestPhotoBytes } from "#casework";
import { PhotoFiles, RecordsTrouble, tellPhoto } from "#records";
import { makeFolder } from "./data-folders.ts";
import { beginnings, pngOf } from "./made-photos.ts";

const hashOf = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");

const codeOf = async (run: Promise<unknown>): Promise<string> => {
  const problem: unknown = await run.then(
    () => null,
    (thrown: unknown) => thrown,
  );
  if (problem instanceof RecordsTrouble) return problem.finding.code;
  throw problem ?? new Error("It was kept.");
};

describe("what a photo is told by", () => {
  it.each([
    ["a JPEG of a camera", "image/jpeg"],
    ["a JPEG of a program", "image/jpeg"],
    ["a JPEG without a name", "image/jpeg"],
    ["a PNG", "image/png"],
    ["a lossy WebP", "image/webp"],
    ["a lossless WebP", "image/webp"],
    ["an extended WebP", "image/webp"],
    ["a phone's HEIC", "heic"],
    ["a phone's HEIC of another brand", "heic"],
    ["a film", "no-photo"],
    ["a GIF", "no-photo"],
    ["a PDF", "no-photo"],
    ["a page", "no-photo"],
    ["a drawing with script", "no-photo"],
    ["a sound (RIFF too)", "no-photo"],
    ["half a JPEG marker", "no-photo"],
    ["a PNG that lost its first byte in mail", "no-photo"],
  ])("%s is %s", (name, kind) => {
    expect(tellPhoto(new Uint8Array(beginnings[name] ?? []))).toEqual({ kind });
  });

  it("fewer bytes than tell anything are no photo", () => {
    for (let length = 0; length < 16; length++) {
      expect(tellPhoto(pngOf(1).subarray(0, length))).toEqual({ kind: "no-photo" });
    }
  });
});

describe("photos as files", () => {
  let folder: string;
  let photos: PhotoFiles;
  beforeEach(() => {
    folder = join(makeFolder(), "photos");
    photos = new PhotoFiles(folder);
  });

  it("lie under their hash and come back to the byte", async () => {
    const bytes = pngOf(1, 100_000);
    const hash = await photos.savePhoto(bytes);
    expect(hash).toBe(hashOf(bytes));
    expect(readFileSync(join(folder, hash.slice(0, 2), hash)).equals(bytes)).toBe(true);
    expect(await photos.loadPhoto(hash)).toEqual(Buffer.from(bytes));
    expect(await photos.savePhoto(bytes)).toBe(hash);
    expect(await photos.listPhotos()).toEqual([hash]);
    expect(readdirSync(join(folder, "incoming"))).toEqual([]);
  });

  it("come in pieces of any size, the first of them too", async () => {
    const bytes = pngOf(2, 5000);
    for (const size of [1, 3, 15, 16, 17, 999, 6000]) {
      const pieces = async function* (): AsyncGenerator<Uint8Array> {
        for (let at = 0; at < bytes.length; at += size) yield bytes.subarray(at, at + size);
      };
      expect(await photos.receivePhoto(pieces())).toEqual({ hash: hashOf(bytes), kind: "image/png", bytes: 5000 });
    }
  });

  it("may arrive many at once, the same and others", async () => {
    const hashes = await Promise.all(Array.from({ length: 24 }, (_, n) => photos.savePhoto(pngOf(n % 6, 3000))));
    expect(await photos.listPhotos()).toEqual([...new Set(hashes)].toSorted());
    expect(readdirSync(join(folder, "incoming"))).toEqual([]);
  });

  it("are turned away by what they are, with nothing left behind", async () => {
    expect(await codeOf(photos.savePhoto(new Uint8Array(beginnings["a phone's HEIC"] ?? [])))).toBe("photo-heic");
    expect(await codeOf(photos.savePhoto(new Uint8Array(beginnings["a page"] ?? [])))).toBe("not-a-photo");
    expect(await codeOf(photos.savePhoto(new Uint8Array()))).toBe("not-a-photo");
    expect(readdirSync(folder)).toEqual(["incoming"]);
    expect(readdirSync(join(folder, "incoming"))).toEqual([]);
  });

  it("are turned away at the first byte too many, before the rest is asked for", async () => {
    const piece = pngOf(1, 1024 * 1024);
    let asked = 0;
    const endless = async function* (): AsyncGenerator<Uint8Array> {
      for (;;) {
        asked += piece.length;
        yield piece;
      }
    };
    expect(await codeOf(photos.receivePhoto(endless()))).toBe("photo-too-large");
    expect(asked).toBe(largestPhotoBytes + piece.length);
    expect(readdirSync(join(folder, "incoming"))).toEqual([]);
  });

  it("as large as may be are kept", async () => {
    expect(await photos.receivePhoto(oneOf(pngOf(1, largestPhotoBytes)))).toMatchObject({ bytes: largestPhotoBytes });
  });

  it("that are no hash are not looked for", async () => {
    expect(await photos.loadPhoto("../../records.db")).toBeNull();
    expect(await photos.loadPhoto("a".repeat(64))).toBeNull();
    expect(await photos.hasPhoto("A".repeat(64))).toBe(false);
  });
});

async function* oneOf(bytes: Uint8Array): AsyncGenerator<Uint8Array> {
  yield bytes;
}
