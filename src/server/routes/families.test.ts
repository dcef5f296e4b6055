import { mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { FastifyInstance } from "fastify";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { Finding } from "#contract";
import { demoFamilySheets } from "#demo";
import { openFamilyFiles } from "#records";
import { buildApp } from "../app.ts";
import { openFamilyShelf } from "../family-shelf.ts";

const [demoId = "", demoSheet] = Object.entries(demoFamilySheets)[0] ?? [];

/** A family of the workshop's own: the first demo sheet under another id and name. */
const ownSheet = (name: string): string => JSON.stringify({ ...(demoSheet as object), id: "own-line", name });

let folder: string;
let app: FastifyInstance;

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), "families-"));
  const families = openFamilyShelf(await openFamilyFiles(folder), demoFamilySheets);
  app = buildApp({
    pages: null,
    families,
    today: () => "14 May 2031",
    report: (problem) => expect.fail(String(problem)),
  });
});
afterEach(async () => {
  await app.close();
  rmSync(folder, { recursive: true, force: true });
});

const put = (text: string, headers: Record<string, string>, id = "own-line") =>
  app.inject({
    method: "PUT",
    url: `/api/families/${id}`,
    payload: text,
    headers: { "content-type": "application/json", ...headers },
  });
const isNew = { "if-none-match": "*" };
const codesOf = (reply: { body: string }): readonly string[] =>
  (JSON.parse(reply.body) as { findings: readonly Finding[] }).findings.map(({ code, path }) => `${code} ${path}`);

describe("families over HTTP", () => {
  it("lists the invented ones, read-only, and the workshop's own", async () => {
    await put(ownSheet("Our own"), isNew);
    const { families } = (await app.inject("/api/families")).json() as {
      families: { id: string; read_only: boolean }[];
    };
    expect(families).toHaveLength(1 + Object.keys(demoFamilySheets).length);
    expect(families.find(({ id }) => id === "own-line")).toMatchObject({ name: "Our own", read_only: false });
    expect(families.find(({ id }) => id === demoId)).toMatchObject({ invented: true, read_only: true });
  });

  it("gives one document with its version, and 304 to who has it", async () => {
    const reply = await app.inject(`/api/families/${demoId}`);
    expect(reply.json()).toEqual(demoSheet);
    const again = await app.inject({
      url: `/api/families/${demoId}`,
      headers: { "if-none-match": String(reply.headers.etag) },
    });
    expect([again.statusCode, again.body]).toEqual([304, ""]);
  });

  it("keeps a document to the letter", async () => {
    const text = ownSheet("Our own").replace(",", ",\n\n  ");
    const saved = await put(text, isNew);
    expect(saved.statusCode).toBe(201);
    const kept = await app.inject("/api/families/own-line");
    expect([kept.body, kept.headers.etag]).toEqual([text, saved.headers.etag]);
  });

  it("gives the loser both versions and saves nothing of it", async () => {
    const first = await put(ownSheet("First"), isNew);
    const seen = { "if-match": String(first.headers.etag) };
    expect((await put(ownSheet("Winner"), seen)).statusCode).toBe(200);
    const loser = await put(ownSheet("Loser"), seen);
    expect([loser.statusCode, codesOf(loser)]).toEqual([412, ["superseded "]]);
    expect(loser.json()).toMatchObject({ yours: ownSheet("Loser"), latest: { text: ownSheet("Winner") } });
    const latest = { "if-match": String(loser.headers.etag) };
    expect((await put(ownSheet("Settled"), latest)).statusCode).toBe(200);
    expect((await put(ownSheet("New"), isNew)).statusCode).toBe(412);
  });

  it("wants to know the version seen", async () => {
    for (const headers of [{}, { "if-match": "*" }, { "if-match": "unquoted" }]) {
      const reply = await put(ownSheet("x"), headers);
      expect([reply.statusCode, codesOf(reply)]).toEqual([428, ["version-needed "]]);
    }
  });

  it("answers a version of a family that is not there with 412", async () => {
    const reply = await put(ownSheet("x"), { "if-match": '"0123"' });
    expect([reply.statusCode, reply.json()]).toMatchObject([412, { latest: null }]);
  });

  it("refuses a document that is wrong, with all findings, and keeps no half of it", async () => {
    const wrong = ownSheet("x").replace('"wheelbase_mm"', '"wheelbase_m"');
    const reply = await put(wrong, isNew);
    expect(reply.statusCode).toBe(422);
    expect(codesOf(reply)).toContain("key-unit wheelbase_m");
    expect(codesOf(await put('{"id": "own-line", "id": NaN}', isNew))).toEqual(
      expect.arrayContaining(["duplicate-key id", "not-a-number id", "missing-key front"]),
    );
    expect((await put("", isNew)).statusCode).toBe(422);
    expect(readdirSync(folder)).toEqual([]);
  });

  it("refuses another id than that of the address, and the families that come with the program", async () => {
    const other = await put(ownSheet("x"), isNew, "other-line");
    expect([other.statusCode, codesOf(other)]).toEqual([422, ["id-not-of-address id"]]);
    const demo = await put(JSON.stringify(demoSheet), isNew, demoId);
    expect([demo.statusCode, codesOf(demo)]).toEqual([403, ["read-only id"]]);
  });

  it("names the nearest family", async () => {
    const reply = await app.inject(`/api/families/${demoId}x`);
    expect(reply.statusCode).toBe(404);
    expect(reply.json()).toMatchObject({ findings: [{ code: "unknown-family", hint: `The nearest is ${demoId}.` }] });
    expect((await app.inject("/api/families/..%2F..%2Fetc")).statusCode).toBe(404);
  });

  it("shows invented families as examples beside real ones: to look at, never among those a car may be of", async () => {
    const store = await openFamilyFiles(folder);
    const own = buildApp({
      pages: null,
      families: openFamilyShelf(store, {}, demoFamilySheets),
      today: () => "14 May 2031",
      report: (problem) => expect.fail(String(problem)),
    });
    const list = async () =>
      (await own.inject("/api/families")).json() as {
        families: { id: string; name: string }[];
        examples: { id: string; read_only: boolean }[];
      };
    const before = await list();
    expect(before.families).toEqual([]);
    expect(before.examples.map(({ id }) => id)).toEqual(Object.keys(demoFamilySheets));
    expect((await own.inject(`/api/families/${demoId}`)).statusCode).toBe(404);
    expect((await own.inject(`/api/families/${demoId}?examples=1`)).json()).toEqual(demoSheet);
    await store.save(demoId, JSON.stringify({ ...(demoSheet as object), name: "Our own" }), null);
    const after = await list();
    expect(after.families).toMatchObject([{ id: demoId, name: "Our own" }]);
    expect(after.examples.map(({ id }) => id)).not.toContain(demoId);
    expect((await own.inject(`/api/families/${demoId}?examples=1`)).json()).toMatchObject({ name: "Our own" });
    await own.close();
  });

  it("lists a stored file that has been spoilt by hand, with what is wrong", async () => {
    writeFileSync(join(folder, "spoilt.family.json"), '{"id": ');
    const { families } = (await app.inject("/api/families")).json() as { families: { id: string }[] };
    expect(families.find(({ id }) => id === "spoilt")).toMatchObject({ findings: [{ code: "not-json" }] });
  });
});
