import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { FastifyInstance } from "fastify";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { z } from "zod";
import type { Door, Finding } from "#contract";
import { buildApp } from "./app.ts";
import { openFamilyShelf } from "./family-shelf.ts";
import { startServer } from "./start-server.ts";

const halfInput = z.strictObject({ length_mm: z.number() });
const noFamilies = openFamilyShelf(
  { list: async () => [], load: async () => null, save: async () => ({ kind: "superseded", current: null }) },
  {},
);

const half: Door<z.infer<typeof halfInput>> = {
  id: "test.half",
  summary: "Half of a length.",
  input: halfInput,
  output: z.strictObject({ half_mm: z.number() }),
  relation: "x / 2",
  source: "invented",
  accuracy: "exact",
  compute: ({ length_mm }) => {
    if (length_mm === 13) throw new Error("inner workings");
    if (length_mm === 14) return { output: { half_mm: Number.NaN } };
    if (length_mm < 0) {
      return { findings: [{ code: "out-of-range", path: "length_mm", got: "-", needed: "0 or more", hint: "" }] };
    }
    return { output: { half_mm: length_mm / 2 } };
  },
};

let app: FastifyInstance;
let reported: unknown[];
let pages: string;

beforeEach(() => {
  reported = [];
  pages = mkdtempSync(join(tmpdir(), "pages-"));
  mkdirSync(join(pages, "assets"));
  writeFileSync(join(pages, "index.html"), "<title>Underbench</title>");
  writeFileSync(join(pages, "assets", "page-1a2b.js"), "export {};");
  app = buildApp({
    pages,
    families: noFamilies,
    today: () => "14 May 2031",
    doors: [half],
    report: (problem) => reported.push(problem),
  });
});
afterEach(async () => {
  await app.close();
  rmSync(pages, { recursive: true, force: true });
});

const ask = (text: string | Buffer, id = "test.half", type = "application/json") =>
  app.inject({ method: "POST", url: `/api/calc/${id}`, payload: text, headers: { "content-type": type } });

const findings = (reply: { body: string }): readonly Finding[] =>
  (JSON.parse(reply.body) as { findings: readonly Finding[] }).findings;

describe("calculations over HTTP", () => {
  it("lists them with their schemas", async () => {
    const reply = await app.inject("/api/calc");
    expect(reply.json()).toMatchObject({
      calculations: [{ id: "test.half", input: { properties: { length_mm: { type: "number" } } } }],
    });
  });

  it("answers with the output", async () => {
    const reply = await ask('{"length_mm": 0.3}');
    expect([reply.statusCode, reply.json()]).toEqual([200, { output: { half_mm: 0.15 } }]);
  });

  it("refuses input with every finding at once", async () => {
    const reply = await ask('{"length_m": "1", "length_m": NaN}');
    expect(reply.statusCode).toBe(422);
    expect(findings(reply).map(({ code, path }) => [code, path])).toEqual([
      ["duplicate-key", "length_m"],
      ["not-a-number", "length_m"],
      ["missing-key", "length_mm"],
    ]);
    expect(findings(await ask('{"length_mm": -1}'))).toHaveLength(1);
  });

  it.each([
    ["", "no-input"],
    ["{", "not-json"],
    ['{"length_mm": Infinity}', "not-a-number"],
    ['{"length_mm": 1e400}', "number-too-large"],
    ["[1]", "wrong-type"],
    ["null", "wrong-type"],
    [`${"[".repeat(100)}`, "too-deep"],
  ])("refuses %s", async (text, code) => {
    const reply = await ask(text);
    expect([reply.statusCode, findings(reply)[0]?.code]).toEqual([422, code]);
  });

  it("refuses bytes that are not UTF-8", async () => {
    expect(findings(await ask(Buffer.from([0x7b, 0xff, 0x7d])))[0]?.code).toBe("not-utf-eight");
  });

  it("answers 50 MB of JSON with findings and 65 MB with its limit", async () => {
    const many = await ask(`{"length_mm": [${"0,".repeat(25_000_000)}0]}`);
    expect([many.statusCode, findings(many)[0]?.code]).toEqual([422, "too-many-values"]);
    const more = await ask(" ".repeat(65 * 1024 * 1024));
    expect([more.statusCode, findings(more)[0]?.code]).toEqual([413, "input-too-large"]);
  });

  it("refuses another content type", async () => {
    const reply = await ask('{"length_mm": 1}', "test.half", "text/plain");
    expect([reply.statusCode, findings(reply)[0]?.code]).toEqual([415, "not-json-type"]);
  });

  it("names the nearest id", async () => {
    const reply = await ask("{}", "test.hafl");
    expect(reply.statusCode).toBe(404);
    expect(findings(reply)[0]).toMatchObject({ code: "unknown-calculation", hint: "The nearest is test.half." });
  });

  it("says a fault is ours and keeps what happened to itself", async () => {
    const reply = await ask('{"length_mm": 13}');
    expect([reply.statusCode, findings(reply)[0]?.code]).toEqual([500, "our-fault"]);
    expect(reply.body).not.toContain("inner workings");
    expect(String(reported[0])).toContain("inner workings");
  });

  it("never lets NaN leave as null", async () => {
    expect((await ask('{"length_mm": 14}')).statusCode).toBe(500);
    expect(String(reported[0])).toContain("half_mm");
  });
});

describe("pages and addresses", () => {
  const page = { accept: "text/html" };

  it("serves the index at every page of the program and files as they are", async () => {
    for (const url of ["/", "/families/an-invented-one"]) {
      const reply = await app.inject({ url, headers: page });
      expect([reply.statusCode, reply.body]).toEqual([200, "<title>Underbench</title>"]);
      expect(reply.headers["content-security-policy"]).toContain("default-src 'self'");
      expect(reply.headers["cache-control"]).toBe("no-cache");
    }
    const file = await app.inject("/assets/page-1a2b.js");
    expect([file.statusCode, file.headers["cache-control"]]).toEqual([200, "public, max-age=31536000, immutable"]);
  });

  it("answers unknown addresses with a finding", async () => {
    for (const url of ["/api/none", "/assets/none.js", "/..%2fpackage.json"]) {
      const reply = await app.inject({ url, headers: url.startsWith("/api") ? page : {} });
      expect([reply.statusCode, findings(reply)[0]?.code]).toEqual([404, "no-such-address"]);
    }
  });

  it("answers addresses that cannot be read, and other methods, with a finding", async () => {
    const unreadable = await app.inject({ method: "POST", url: "/api/calc/%E0%A4%A" });
    expect([unreadable.statusCode, findings(unreadable)[0]?.code]).toEqual([400, "bad-request"]);
    const long = await app.inject({ method: "POST", url: `/api/calc/${"a".repeat(500)}` });
    expect(long.statusCode).toBeGreaterThanOrEqual(400);
    expect(findings(long)[0]?.code).toBeDefined();
    const [door] = (await app.inject("/api/calc")).json<{ calculations: { id: string }[] }>().calculations;
    for (const method of ["GET", "PUT", "PATCH", "DELETE"] as const) {
      const reply = await app.inject({ method, url: `/api/calc/${door?.id}` });
      expect([reply.statusCode, reply.headers.allow, findings(reply)[0]?.code]).toEqual([405, "POST", "other-method"]);
    }
    const unknown = await app.inject("/api/calc/none");
    expect([unknown.statusCode, findings(unknown)[0]?.code]).toEqual([404, "unknown-calculation"]);
  });

  it("answers to its own names only", async () => {
    const reply = await app.inject({ url: "/api/calc", headers: { host: "elsewhere.example" } });
    expect([reply.statusCode, findings(reply)[0]?.code]).toEqual([403, "foreign-host"]);
    expect((await app.inject({ url: "/api/calc", headers: { host: "127.0.0.1:4870" } })).statusCode).toBe(200);
  });
});

describe("listening", () => {
  it("takes the next free port and listens on loopback", async () => {
    const first = await startServer(
      { pages: null, families: noFamilies, today: () => "14 May 2031", report: () => undefined },
      0,
    );
    const port = Number(new URL(first.address).port);
    const second = await startServer(
      { pages: null, families: noFamilies, today: () => "14 May 2031", report: () => undefined },
      port,
    );
    expect(new URL(first.address).hostname).toBe("127.0.0.1");
    expect(Number(new URL(second.address).port)).toBeGreaterThan(port);
    expect((await fetch(`${second.address}/api/calc`)).status).toBe(200);
    await Promise.all([first.stop(), second.stop()]);
  });
});
