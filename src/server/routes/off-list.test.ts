import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, it } from "vitest";
import { demoFamilySheets } from "#demo";
import { openFamilyFiles, openRecords } from "#records";
import { buildApp } from "../app.ts";
import { openFamilyShelf } from "../family-shelf.ts";

const [demoSheet] = Object.values(demoFamilySheets);

it("a car line taken off the list keeps its file, opens as before and can be put back", async () => {
  const folder = mkdtempSync(join(tmpdir(), "off-list-"));
  const records = await openRecords(folder);
  const store = await openFamilyFiles(folder);
  await store.save("own-line", JSON.stringify({ ...(demoSheet as object), id: "own-line" }), null);
  const app = buildApp({
    pages: null,
    families: openFamilyShelf(store, {}),
    records: { cases: records.cases, photos: records.photos, now: () => "2031-05-14T09:00:00.000Z" },
    today: () => "14 May 2031",
    report: (problem) => expect.fail(String(problem)),
  });
  const put = (offList: boolean, headers: Record<string, string>) =>
    app.inject({
      method: "PUT",
      url: "/api/documents/car-line/own-line",
      payload: JSON.stringify({ by: "MK", document: { off_list: offList } }),
      headers: { "content-type": "application/json", ...headers },
    });
  const isOff = async (): Promise<boolean | undefined> => {
    const { families } = (await app.inject("/api/families")).json() as { families: { off_list: boolean }[] };
    return families[0]?.off_list;
  };
  expect(await isOff()).toBe(false);
  expect((await put(true, { "if-none-match": "*" })).statusCode).toBe(201);
  expect(await isOff()).toBe(true);
  expect((await app.inject("/api/families/own-line")).statusCode).toBe(200);
  expect((await put(false, { "if-match": '"1"' })).statusCode).toBe(200);
  expect(await isOff()).toBe(false);
  await app.close();
  await records.close();
  rmSync(folder, { recursive: true, force: true });
});
