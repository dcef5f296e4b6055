import type { FastifyInstance } from "fastify";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { type Finding, parseFamily } from "#contract";
import { buildApp } from "../app.ts";
import { openFamilyShelf } from "../family-shelf.ts";

let app: FastifyInstance;
beforeEach(() => {
  const store = {
    list: async () => [],
    load: async () => null,
    save: async () => expect.fail("a silhouette is not saved"),
  };
  app = buildApp({
    pages: null,
    families: openFamilyShelf(store, {}),
    today: () => "14 May 2031",
    report: (problem) => expect.fail(String(problem)),
  });
});
afterEach(() => app.close());

const make = (payload: string) =>
  app.inject({
    method: "POST",
    url: "/api/families/from-silhouette",
    payload,
    headers: { "content-type": "application/json" },
  });

describe("a family from a silhouette", () => {
  it("says which silhouettes there are and what can be entered", async () => {
    const { entries } = (await app.inject("/api/silhouettes")).json() as {
      entries: { properties: Record<string, { enum?: readonly string[] }> };
    };
    expect(entries.properties.front_layout?.enum).toContain("strut");
    expect(entries.properties.rear_layout?.enum).toContain("five-link");
    expect(Object.keys(entries.properties)).toContain("wheelbase_mm");
  });

  it("makes a whole family sheet of a few entries", async () => {
    const reply = await make('{"name": "An unknown one", "wheelbase_mm": 2650, "rear_layout": "trailing-arm"}');
    const { family } = reply.json() as { family: unknown };
    const parsed = parseFamily(family);
    if ("findings" in parsed) expect.fail(JSON.stringify(parsed.findings));
    expect(parsed.family.rear).toMatchObject({ layout: "trailing-arm", rung: "scaled" });
    expect(parsed.family.wheelbase).toBeCloseTo(2.65, 12);
  });

  it("refuses what no template fits, all at once", async () => {
    const reply = await make(
      '{"wheelbase_m": 2.65, "front_layout": "leaf", "rear_track_mm": 1000, "rear_track_mm": 100}',
    );
    const { findings } = reply.json() as { findings: readonly Finding[] };
    expect([reply.statusCode, findings.map(({ code, path }) => `${code} ${path}`)]).toEqual([
      422,
      [
        "duplicate-key rear_track_mm",
        "key-unit wheelbase_m",
        "unknown-word front_layout",
        "out-of-range rear_track_mm",
      ],
    ]);
  });
});
