import type { FastifyInstance } from "fastify";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { Finding } from "#contract";
import { demoFamilySheets } from "#demo";
import { buildApp } from "../app.ts";
import { openFamilyShelf } from "../family-shelf.ts";

const familyId = "ouzel-saloon";
const position = "rear-left/trailing-link/inner-bush";

const question = {
  sheet: "fault",
  family: familyId,
  corner: "rear-left",
  position,
  fault: { kind: "torn", grade: 2 },
  condition: { braking_n: 2000 },
};

let app: FastifyInstance;
beforeEach(() => {
  const store = { list: async () => [], load: async () => null, save: async () => expect.fail("nothing is saved") };
  app = buildApp({
    pages: null,
    families: openFamilyShelf(store, demoFamilySheets),
    today: () => "14 May 2031",
    report: (problem) => expect.fail(String(problem)),
  });
});
afterEach(() => app.close());

const print = (body: unknown) =>
  app.inject({
    method: "POST",
    url: "/api/sheets",
    payload: JSON.stringify(body),
    headers: { "content-type": "application/json" },
  });
const placesOf = (reply: { body: string }): readonly string[] =>
  (JSON.parse(reply.body) as { findings: readonly Finding[] }).findings.map(({ code, path }) => `${code} ${path}`);

describe("the sheet of one fault", { timeout: 60_000 }, () => {
  it("is a PDF under a name that says what it is", async () => {
    const reply = await print(question);
    expect([reply.statusCode, reply.headers["content-type"]]).toEqual([200, "application/pdf"]);
    expect(reply.rawPayload.subarray(0, 5).toString("latin1")).toBe("%PDF-");
    expect(reply.headers["content-disposition"]).toMatch(
      /filename="ouzel-saloon-rear-left-[a-z-]+-inner-bush-torn\.pdf"/,
    );
  });

  it("gives the same bytes for the same question on the same day", async () => {
    const [one, other] = [await print(question), await print(question)];
    expect(one.rawPayload.equals(other.rawPayload)).toBe(true);
  });

  it("refuses what cannot be computed under the keys that were sent", async () => {
    expect(placesOf(await print({ ...question, family: "ouzel-salon" }))).toEqual(["unknown-family family"]);
    expect(placesOf(await print({ ...question, position: "rear-left/none" }))).toEqual(["unknown-position position"]);
    expect(placesOf(await print({ ...question, fault: { kind: "loose", play_mm: 500 } }))).toEqual([
      "out-of-range fault.play_mm",
    ]);
    expect(placesOf(await print({ ...question, condition: { braking_kn: 2 } }))).toEqual([
      "key-unit condition.braking_kn",
    ]);
    expect(placesOf(await print({ ...question, condition: { contact_rise_mm: 900 } }))).toEqual([
      "out-of-range condition.contact_rise_mm",
    ]);
  });
});
