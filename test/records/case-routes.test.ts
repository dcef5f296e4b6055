import { join } from "node:path";
import type { FastifyInstance } from "fastify";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { type Finding, formatBody, formatLook } from "#contract";
import { openRecords, type Records } from "#records";
import { buildApp, openFamilyShelf } from "#server";
import { CaseRepository } from "../../src/records/case-repository.ts";
import { openSqlite } from "../../src/records/dialect/open-sqlite.ts";
import { sqliteTrouble } from "../../src/records/dialect/sqlite-trouble.ts";
import { makeFolder } from "./data-folders.ts";
import { inventedCar, inventedVisit, makeLook, uuidOf } from "./made-cases.ts";

const noFamilies = openFamilyShelf(
  { list: async () => [], load: async () => null, save: async () => ({ kind: "superseded", current: null }) },
  {},
);
const now = "2031-05-14T09:30:00.000Z";

let folder: string;
let records: Records;
let app: FastifyInstance;
let reported: unknown[];

const serveRecords = (opened: Pick<Records, "cases" | "photos">): FastifyInstance =>
  buildApp({
    pages: null,
    families: noFamilies,
    records: { ...opened, now: () => now },
    today: () => "",
    report: (problem) => reported.push(problem),
  });

beforeEach(async () => {
  reported = [];
  folder = makeFolder();
  records = await openRecords(folder);
  app = serveRecords(records);
});
afterEach(async () => {
  await app.close();
  await records.close();
});

const isNew = { "if-none-match": "*" };
const seen = (version: number) => ({ "if-match": `"${version}"` });

const put = (address: string, body: unknown, headers: Record<string, string> = isNew) =>
  app.inject({
    method: "PUT",
    url: `/api/documents/${address}`,
    headers: { "content-type": "application/json", ...headers },
    payload: typeof body === "string" ? body : JSON.stringify(body),
  });
const carSheet = (changes: Partial<typeof inventedCar> = {}) => ({
  by: "MK",
  document: formatBody("car", { ...inventedCar, ...changes }),
});
const visitSheet = (changes: Partial<typeof inventedVisit> = {}, more: Record<string, unknown> = {}) => ({
  by: "MK",
  document: formatBody("visit", { ...inventedVisit, ...changes }),
  ...more,
});
const post = (looks: readonly unknown[]) =>
  app.inject({
    method: "POST",
    url: "/api/looks",
    headers: { "content-type": "application/json" },
    payload: JSON.stringify({ looks }),
  });

const findings = (reply: { body: string }): readonly Finding[] =>
  (JSON.parse(reply.body) as { findings: readonly Finding[] }).findings;
const placesOf = (reply: { body: string }): readonly string[] =>
  findings(reply).map(({ code, path }) => `${code} ${path}`);

interface Answer {
  readonly id: string | null;
  readonly outcome: string;
  readonly look?: { readonly sequence: number; readonly clock_off: boolean };
  readonly findings?: readonly Finding[];
  readonly remarks?: readonly Finding[];
}
const answers = (reply: { body: string }): readonly Answer[] =>
  (JSON.parse(reply.body) as { answers: readonly Answer[] }).answers;

const begin = async (): Promise<void> => {
  expect((await put("car/car-1", carSheet())).statusCode).toBe(201);
  expect((await put("visit/visit-1", visitSheet())).statusCode).toBe(201);
};

describe("documents over HTTP", () => {
  it("keep who, when and which version, and come back with it", async () => {
    const saved = await put("car/car-1", carSheet());
    expect([saved.statusCode, saved.headers.etag]).toEqual([201, '"1"']);
    expect(saved.json()).toEqual({
      kind: "car",
      id: "car-1",
      version: 1,
      by: "MK",
      at: now,
      ...{ document: carSheet().document },
    });
    const changed = await put("car/car-1", { ...carSheet({ name: "renamed" }), by: "RB" }, seen(1));
    expect([changed.statusCode, changed.headers.etag]).toEqual([200, '"2"']);
    const got = await app.inject("/api/documents/car/car-1");
    expect(got.json()).toMatchObject({ version: 2, by: "RB", document: { name: "renamed" } });
    expect(
      (await app.inject({ url: "/api/documents/car/car-1", headers: { "if-none-match": '"2"' } })).statusCode,
    ).toBe(304);
    const { versions } = (await app.inject("/api/documents/car/car-1/versions")).json() as { versions: unknown[] };
    expect(versions).toMatchObject([
      { version: 1, by: "MK" },
      { version: 2, by: "RB" },
    ]);
  });

  it("give the second of two who edit one car both versions, and keep nothing of theirs", async () => {
    await put("car/car-1", carSheet());
    await put("car/car-1", { ...carSheet({ name: "winner" }), by: "RB" }, seen(1));
    const loser = await put("car/car-1", carSheet({ name: "loser" }), seen(1));
    expect([loser.statusCode, loser.headers.etag, placesOf(loser)]).toEqual([412, '"2"', ["superseded "]]);
    expect(loser.json()).toMatchObject({
      yours: { name: "loser" },
      latest: { version: 2, by: "RB", document: { name: "winner" } },
    });
    expect((await put("car/car-1", carSheet({ name: "new" }))).statusCode).toBe(412);
    expect((await put("car/car-1", carSheet({ name: "settled" }), seen(2))).statusCode).toBe(200);
    const gone = await put("car/car-9", carSheet(), seen(3));
    expect([gone.statusCode, gone.json()]).toMatchObject([412, { latest: null }]);
  });

  it("want to know the version seen", async () => {
    for (const headers of [{}, { "if-match": "*" }, { "if-match": "1" }, { "if-match": '"1x"' }]) {
      const reply = await put("car/car-1", carSheet(), headers as Record<string, string>);
      expect([reply.statusCode, placesOf(reply)]).toEqual([428, ["version-needed "]]);
    }
  });

  it("are refused with everything that is wrong with them at once", async () => {
    const reply = await put("car/car-1", '{"document": {"odometer_offset_mi": 1, "year": NaN}, "by": ""}');
    expect(reply.statusCode).toBe(422);
    expect(placesOf(reply)).toEqual(
      expect.arrayContaining([
        "not-a-number document.year",
        "unknown-key document.odometer_offset_mi",
        "missing-key document.name",
        "wrong-length by",
      ]),
    );
    expect((await put("car/car-1", "")).statusCode).toBe(422);
    expect((await app.inject("/api/documents/car/car-1")).statusCode).toBe(404);
  });

  it("know their kinds and ids", async () => {
    const kind = await put("carr/car-1", carSheet());
    expect([kind.statusCode, findings(kind)[0]]).toMatchObject([404, { hint: "The nearest is car." }]);
    expect(placesOf(await put("car/Car%201", carSheet()))).toEqual(["wrong-format id"]);
    expect(placesOf(await app.inject("/api/documents/plan/none"))).toEqual(["unknown-document id"]);
    const settings = {
      by: "MK",
      document: {
        workshop: "",
        currency: "€",
        labour_cents_per_hour: 9000,
        tax_share: 0.19,
        visit_cents: 0,
        invented: true,
        units: { distance: "km", length: "mm", torque: "nm", angle: "deg", pressure: "bar" },
      },
    };
    expect((await put("settings/shop", settings)).statusCode).toBe(201);
    expect(placesOf(await put("settings/other", settings))).toEqual(["wrong-format id"]);
  });

  it("belong to a car and a visit that are there", async () => {
    expect(placesOf(await put("visit/visit-1", visitSheet()))).toEqual(["unknown-car document.car"]);
    const words = { by: "MK", document: { words: "it knocks", symptoms: [] } };
    expect(placesOf(await put("enquiry/visit-1", words))).toEqual(["unknown-visit id"]);
    await begin();
    expect((await put("enquiry/visit-1", words)).statusCode).toBe(201);
  });
});

describe("an odometer over HTTP", () => {
  const later = { date: "2031-11-14" };

  it.each([
    ["lower than last time", { odometerKm: 8_000 }, "odometer-lower"],
    ["in miles where km are asked", { odometerKm: 54_000 }, "odometer-miles"],
    ["with the tenths typed too", { odometerKm: 905_000 }, "odometer-jump"],
    ["in km taken for miles", { odometerKm: 140_000 }, "odometer-miles"],
  ])("%s is refused, nothing kept", async (_, changes, code) => {
    await begin();
    const reply = await put("visit/visit-2", visitSheet({ ...later, ...changes }));
    expect([reply.statusCode, placesOf(reply)]).toEqual([422, [`${code} document.odometer_km`]]);
    expect((await app.inject("/api/documents/visit/visit-2")).statusCode).toBe(404);
  });

  it("far ahead is taken where it is confirmed", async () => {
    await begin();
    const far = visitSheet({ ...later, odometerKm: 905_000 }, { confirmed: true });
    expect((await put("visit/visit-2", far)).statusCode).toBe(201);
  });

  it("that was replaced is taken once the car says so", async () => {
    await begin();
    await put("car/car-1", carSheet({ odometerOffsetKm: 84_100 }), seen(1));
    expect((await put("visit/visit-2", visitSheet({ ...later, odometerKm: 12 }))).statusCode).toBe(201);
    expect((await put("visit/visit-3", visitSheet({ date: "2031-12-01", odometerKm: 900 }))).statusCode).toBe(201);
    const fallen = await put("visit/visit-4", visitSheet({ date: "2031-12-24", odometerKm: 500 }));
    expect(placesOf(fallen)).toEqual(["odometer-lower document.odometer_km"]);
  });
});

describe("looks over HTTP", () => {
  beforeEach(begin);

  it("are answered one by one: stored, known, clash, refused", async () => {
    const [one, two, three] = [makeLook(1), makeLook(2), makeLook(3)].map(formatLook);
    expect((await post([one])).statusCode).toBe(200);
    const reply = await post([one, { ...two, plaice: "x" }, { ...one, who: "RB" }, three, 7]);
    expect(answers(reply).map(({ outcome }) => outcome)).toEqual(["known", "refused", "clash", "stored", "refused"]);
    expect(answers(reply)[1]?.findings?.map(({ code, path }) => `${code} ${path}`)).toEqual([
      "unknown-key looks[1].plaice",
    ]);
    expect(answers(reply)[2]).toMatchObject({ look: { sequence: 1, who: "MK" }, findings: [{ code: "look-clash" }] });
    expect(answers(reply)[3]?.look?.sequence).toBe(2);
  });

  it("of a clock a year off are kept, and say so", async () => {
    const [answer] = answers(await post([formatLook(makeLook(1, { at: "2030-05-14T09:30:00Z" }))]));
    expect(answer).toMatchObject({ outcome: "stored", look: { clock_off: true }, remarks: [{ code: "clock-off" }] });
  });

  it("ten times too large are refused with what was meant, and taken where confirmed", async () => {
    const content = { kind: "reading", quantity: "pad-thickness", value_mm: 85, u_mm: 0.1 };
    const look = { ...formatLook(makeLook(1)), content };
    const [refused] = answers(await post([look]));
    expect(refused).toMatchObject({
      outcome: "refused",
      findings: [{ code: "reading-implausible", path: "looks[0].content.value_mm" }],
    });
    expect(refused?.findings?.[0]?.hint).toContain("8.5");
    expect(answers(await post([{ ...look, confirmed: true }]))[0]?.outcome).toBe("stored");
    expect(answers(await post([{ ...look, confirmed: true }]))[0]?.outcome).toBe("known");
  });

  it("belong to a visit that is there, of the car they name", async () => {
    const reply = await post([formatLook(makeLook(1, { visit: "none" })), formatLook(makeLook(2, { car: "car-2" }))]);
    expect(answers(reply).map((answer) => answer.findings?.[0]?.code)).toEqual(["unknown-visit", "visit-of-other-car"]);
    expect(await records.cases.loadLooks({ car: "car-1" })).toEqual([]);
  });

  it("whose photo has not come are kept and say so", async () => {
    const [answer] = answers(await post([formatLook(makeLook(1, { photo: "a".repeat(64) }))]));
    expect(answer).toMatchObject({ outcome: "stored", remarks: [{ code: "photo-missing" }] });
  });

  it.each([
    ["nothing", "", "no-input "],
    ["no looks", '{"looks": []}', "wrong-length looks"],
    ["a list alone", "[]", "wrong-type "],
    ["a key of another thing", '{"looks": [1], "look": 1}', "unknown-key look"],
    ["half a text", '{"looks": [{"id": ', "not-json looks[0].id"],
  ])("in a batch that is %s are refused whole", async (_, text, place) => {
    const reply = await app.inject({
      method: "POST",
      url: "/api/looks",
      headers: { "content-type": "application/json" },
      payload: text,
    });
    expect([reply.statusCode, placesOf(reply)]).toEqual([422, [place]]);
  });

  it("with NaN are refused where it stands, and the others stored", async () => {
    const text = JSON.stringify({ looks: [formatLook(makeLook(0)), formatLook(makeLook(4))] });
    const reply = await app.inject({
      method: "POST",
      url: "/api/looks",
      headers: { "content-type": "application/json" },
      payload: text.replace('"u_mm":0.1', '"u_mm":NaN'),
    });
    expect(answers(reply)).toMatchObject([
      { outcome: "refused", id: uuidOf(0), findings: [{ code: "not-a-number", path: "looks[0].content.u_mm" }] },
      { outcome: "stored" },
    ]);
  });
});

describe("cars over HTTP", () => {
  it("stand in a list with their latest visit, and one by one with everything on record", async () => {
    await begin();
    await put("visit/visit-0", visitSheet({ date: "2030-01-01", odometerKm: 60_000 }));
    await put("plan/visit-1", {
      by: "MK",
      document: { visits: [], declined: [], agreed: [], fixed: [], horizon_km: 30000 },
    });
    await post([formatLook(makeLook(1))]);
    expect((await app.inject("/api/cars")).json()).toMatchObject({
      cars: [{ id: "car-1", visits: 2, latest_visit: { id: "visit-1" } }],
    });
    expect((await app.inject("/api/cars/car-1")).json()).toMatchObject({
      car: { id: "car-1" },
      visits: [
        { visit: { id: "visit-0" }, plan: null },
        { visit: { id: "visit-1" }, plan: { version: 1 }, job_card: null, hand_over: null, enquiry: null },
      ],
      looks: [{ sequence: 1, id: uuidOf(1) }],
    });
    expect(placesOf(await app.inject("/api/cars/none"))).toEqual(["unknown-car id"]);
  });
});

describe("a full disk over HTTP", () => {
  it("is said with 507, and what was kept stays", async () => {
    await begin();
    await app.close();
    const { database, db } = await openSqlite(join(folder, "records.db"));
    app = serveRecords({ cases: new CaseRepository({ db, explain: sqliteTrouble }), photos: records.photos });
    const pages = database.pragma("page_count", { simple: true }) as number;
    database.pragma(`max_page_count = ${pages}`);
    const looks = Array.from({ length: 60 }, (_, n) => formatLook(makeLook(n)));
    const reply = await post(looks);
    expect([reply.statusCode, placesOf(reply)]).toEqual([507, ["no-space "]]);
    expect(reported).toHaveLength(1);
    expect((await app.inject("/api/cars/car-1")).json()).toMatchObject({ looks: [], visits: [{}] });
    database.pragma(`max_page_count = ${pages + 1000}`);
    expect(answers(await post(looks)).every(({ outcome }) => outcome === "stored")).toBe(true);
    await db.destroy();
  });
});
