import { createHash } from "node:crypto";
import { readdirSync, rmSync, writeFileSync } from "node:fs";
import { request } from "node:http";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { Finding } from "#contract";
import { openRecords, type Records } from "#records";
import { openFamilyShelf, type RunningServer, startServer } from "#server";
import { makeFolder } from "./data-folders.ts";
import { beginnings, pngOf } from "./made-photos.ts";

const megabyte = 1024 * 1024;
const noFamilies = openFamilyShelf(
  { list: async () => [], load: async () => null, save: async () => ({ kind: "superseded", current: null }) },
  {},
);

let folder: string;
let records: Records;
let server: RunningServer;
let reported: unknown[];

beforeEach(async () => {
  reported = [];
  folder = makeFolder();
  records = await openRecords(folder);
  const caseRecords = { cases: records.cases, photos: records.photos, now: () => "2031-05-14T09:30:00Z" };
  const parts = { pages: null, families: noFamilies, records: caseRecords, today: () => "" };
  server = await startServer({ ...parts, report: (problem) => reported.push(problem) }, 0);
});
afterEach(async () => {
  await server.stop();
  await records.close();
});

const send = (body: Uint8Array, type = "image/png"): Promise<Response> =>
  fetch(`${server.address}/api/photos`, { method: "POST", headers: { "content-type": type }, body: Buffer.from(body) });

const refusedFor = async (reply: Response): Promise<readonly [number, string | undefined]> => {
  const { findings } = (await reply.json()) as { findings: readonly Finding[] };
  return [reply.status, findings[0]?.code];
};

/** Uploads so many megabytes piece by piece, declared or not; how much was taken before the answer came, and the answer. */
const upload = (
  megabytes: number,
  declared: boolean,
  first: Uint8Array,
): Promise<{ readonly status: number; readonly text: string; readonly sentAtAnswer: number }> =>
  new Promise((resolve, reject) => {
    const length = declared ? { "content-length": String(megabytes * megabyte) } : {};
    const sending = request(`${server.address}/api/photos`, {
      method: "POST",
      headers: { "content-type": "image/jpeg", ...length },
    });
    let sent = 0;
    sending.on("error", reject);
    sending.on("response", (reply) => {
      const sentAtAnswer = sent;
      let text = "";
      reply.on("data", (piece: Buffer) => {
        text += piece.toString("utf8");
      });
      reply.on("end", () => {
        resolve({ status: reply.statusCode ?? 0, text, sentAtAnswer });
        sending.destroy();
      });
    });
    const piece = Buffer.alloc(megabyte);
    const more = (): void => {
      if (sending.destroyed) return;
      if (sent === megabytes) {
        sending.end();
        return;
      }
      if (sent === 0) piece.set(first);
      else piece.fill(0, 0, first.length);
      sent++;
      if (sending.write(piece)) setImmediate(more);
      else sending.once("drain", more);
    };
    more();
  });

describe("photos over HTTP", () => {
  it("are answered with their hash and come back as they were", async () => {
    const bytes = pngOf(1, 3 * megabyte);
    const reply = await send(bytes, "application/octet-stream");
    const hash = createHash("sha256").update(bytes).digest("hex");
    expect([reply.status, await reply.json()]).toEqual([201, { hash, kind: "image/png", bytes: bytes.length }]);
    const back = await fetch(`${server.address}/api/photos/${hash}`);
    expect(back.headers.get("content-type")).toBe("image/png");
    expect(back.headers.get("x-content-type-options")).toBe("nosniff");
    expect(Buffer.from(await back.arrayBuffer()).equals(bytes)).toBe(true);
    expect(await refusedFor(await fetch(`${server.address}/api/photos/${"0".repeat(64)}`))).toEqual([
      404,
      "unknown-photo",
    ]);
  });

  it.each([
    ["a page", "image/jpeg", "not-a-photo"],
    ["a phone's HEIC", "image/heic", "photo-heic"],
    ["a film", "video/mp4", "not-a-photo"],
    ["a drawing with script", "image/svg+xml", "not-a-photo"],
    ["a page", "application/json", "not-a-photo"],
    ["a page", "application/x-www-form-urlencoded", "not-a-photo"],
  ])("%s sent as %s is refused: %s", async (name, type, code) => {
    expect(await refusedFor(await send(new Uint8Array(beginnings[name] ?? []), type))).toEqual([422, code]);
    expect(await records.photos.listPhotos()).toEqual([]);
  });

  it("nothing at all is no photo", async () => {
    expect(await refusedFor(await send(new Uint8Array()))).toEqual([422, "not-a-photo"]);
  });

  it.each([
    ["that says so beforehand", true, 45],
    ["that does not say so", false, 100],
  ])("an upload of 300 MB %s is refused long before its end", async (_, declared, mostSent) => {
    const before = process.memoryUsage().rss;
    const { status, text, sentAtAnswer } = await upload(
      300,
      declared,
      new Uint8Array(beginnings["a JPEG of a camera"] ?? []),
    );
    expect([status, (JSON.parse(text) as { findings: readonly Finding[] }).findings[0]?.code]).toEqual([
      413,
      "photo-too-large",
    ]);
    expect(sentAtAnswer).toBeLessThan(mostSent);
    expect(readdirSync(folder).includes("photos") ? readdirSync(join(folder, "photos", "incoming")) : []).toEqual([]);
    expect(process.memoryUsage().rss - before).toBeLessThan(250 * megabyte);
    expect((await send(pngOf(1))).status).toBe(201);
  });

  it("an upload that is no photo is refused at its first bytes", async () => {
    const { status, sentAtAnswer } = await upload(300, false, new Uint8Array(beginnings["a PDF"] ?? []));
    expect(status).toBe(422);
    expect(sentAtAnswer).toBeLessThan(60);
  });

  it("an upload that is broken off leaves nothing, and is no fault of ours", async () => {
    await new Promise<void>((resolve) => {
      const sending = request(`${server.address}/api/photos`, {
        method: "POST",
        headers: { "content-type": "image/png", "content-length": String(megabyte) },
      });
      sending.on("error", () => undefined);
      sending.on("close", () => resolve());
      sending.write(pngOf(1, 1000), () => setTimeout(() => sending.destroy(), 50));
    });
    await expect
      .poll(() =>
        readdirSync(folder).includes("photos") ? readdirSync(join(folder, "photos", "incoming")) : ["not begun"],
      )
      .toEqual([]);
    expect(reported).toEqual([]);
    expect(await records.photos.listPhotos()).toEqual([]);
  });

  it("a folder that fails is said with 507, and looks are not touched by it", async () => {
    writeFileSync(join(folder, "photos"), "a file where a folder belongs");
    expect(await refusedFor(await send(pngOf(1)))).toEqual([507, "photo-not-kept"]);
    expect(reported).toHaveLength(1);
    rmSync(join(folder, "photos"));
    expect((await send(pngOf(1))).status).toBe(201);
  });
});
