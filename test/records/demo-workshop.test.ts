import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import type { CaseStore } from "#casework";
import { formatBody, parseFamily, settingsId } from "#contract";
import { demoFamilies, demoWorkshop } from "#demo";
import { openFamilyFiles, openRecords } from "#records";
import { buildApp, exampleFamilies, givenFamilies, isFresh, openFamilyShelf, openWorkshop } from "#server";
import { runCommand } from "./record-commands.ts";

const today = "2031-05-14";
const expected = demoWorkshop(today, demoFamilies(parseFamily));

/** Opens a folder as the program does; what `act` gets is closed after it. */
const opened = async <T>(
  folder: string,
  act: (stores: {
    cases: CaseStore;
    families: Awaited<ReturnType<typeof openFamilyFiles>>;
    fresh: boolean;
  }) => Promise<T>,
): Promise<T> => {
  const fresh = isFresh(folder);
  const records = await openRecords(folder);
  try {
    return await act({ cases: records.cases, families: await openFamilyFiles(folder), fresh });
  } finally {
    await records.close();
  }
};

const inFolder = async (act: (folder: string) => Promise<void>): Promise<void> => {
  const folder = mkdtempSync(join(tmpdir(), "underbench-demo-"));
  try {
    await act(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};

const begin = (folder: string, day: string, empty = false) =>
  opened(folder, (stores) => openWorkshop(stores, { fresh: stores.fresh, empty, today: day }));

describe("a fresh data folder", () => {
  it("becomes the demo workshop: every document and look as it was made, none with a clock that is off", () =>
    inFolder(async (folder) => {
      expect(await begin(folder, today)).toBe("invented");
      await opened(folder, async ({ cases, families }) => {
        const kept = await cases.listDocuments("car");
        expect(kept.length).toBe(12);
        for (const { kind, id, body } of expected.documents)
          expect((await cases.loadDocument(kind, id))?.body).toEqual(body);
        for (const car of kept) {
          const looks = await cases.loadLooks({ car: car.id });
          expect(looks.map(({ id }) => id)).toEqual(
            expected.looks.filter((look) => look.car === car.id).map(({ id }) => id),
          );
          expect(looks.filter(({ clockOff }) => clockOff)).toEqual([]);
        }
        expect((await families.list()).map(({ id }) => id)).toEqual(["dotterel-coach", "knot-estate"]);
      });
    }));

  it("becomes an empty workshop of one's own where that is asked, and stays so without asking again", () =>
    inFolder(async (folder) => {
      expect(await begin(folder, today, true)).toBe("own");
      expect(await begin(folder, today)).toBe("own");
      await opened(folder, async ({ cases, families }) => {
        for (const kind of ["car", "visit", "settings"] as const) expect(await cases.listDocuments(kind)).toEqual([]);
        expect(await families.list()).toEqual([]);
      });
      expect(givenFamilies("own")).toEqual({});
      expect(Object.keys(givenFamilies("invented")).length).toBe(3);
      expect(Object.keys(exampleFamilies("own")).length).toBe(3);
      expect(exampleFamilies("invented")).toEqual({});
    }));
});

describe("a data folder an earlier build made, without settings", () => {
  const [family] = expected.families;
  const made = expected.documents.find((document) => document.kind === "car");
  if (family === undefined || made?.kind !== "car") throw new Error("the demo workshop has no car");

  it("is somebody's own where only car lines lie in it, and nothing is put into it", () =>
    inFolder(async (folder) => {
      await opened(folder, ({ families }) => families.save("old-line", "{}", null));
      expect(await begin(folder, today)).toBe("own");
      await opened(folder, async ({ cases, families }) => {
        expect(await cases.listDocuments("car")).toEqual([]);
        expect((await families.list()).map(({ id }) => id)).toEqual(["old-line"]);
      });
    }));

  it.each([
    [true, "invented"],
    [false, "own"],
  ])("is what its first car says, invented: %s", (invented, kind) =>
    inFolder(async (folder) => {
      await opened(folder, ({ cases }) =>
        cases.saveDocument("car", made.id, { ...made.body, invented }, { expectedVersion: 0, by: "MK", at: made.at }),
      );
      expect(await begin(folder, today)).toBe(kind);
      await opened(folder, async ({ cases }) => expect((await cases.listDocuments("car")).length).toBe(1));
    }),
  );
});

describe("a demo workshop opened again", () => {
  it("stays as it was left, also when asked to begin empty on a later day", () =>
    inFolder(async (folder) => {
      await begin(folder, today);
      const [first] = await opened(folder, ({ cases }) => cases.listDocuments("car"));
      if (!first) throw new Error("no car");
      const changed = { ...first.body, owner: "somebody else" };
      const meta = { expectedVersion: 1, by: "E. Tarn", at: `${today}T12:00:00Z` };
      await opened(folder, ({ cases }) => cases.saveDocument("car", first.id, changed, meta));
      expect(await begin(folder, "2031-06-20", true)).toBe("invented");
      await opened(folder, async ({ cases }) => {
        expect((await cases.loadDocument("car", first.id))?.body.owner).toBe("somebody else");
        expect((await cases.listDocuments("car")).length).toBe(12);
      });
    }));

  it("is finished as of the day it began, where its loading was broken off", () =>
    inFolder(async (folder) => {
      let saved = 0;
      const broken = opened(folder, ({ cases, families, fresh }) => {
        const breaking: CaseStore = {
          ...cases,
          loadDocument: (kind, id) => cases.loadDocument(kind, id),
          appendLooks: (looks, at) => cases.appendLooks(looks, at),
          saveDocument: (...given) => {
            saved += 1;
            if (saved > 20) throw new Error("the power went");
            return cases.saveDocument(...given);
          },
        };
        return openWorkshop({ cases: breaking, families }, { fresh, empty: false, today });
      });
      await expect(broken).rejects.toThrow("the power went");
      expect(await begin(folder, "2031-05-15")).toBe("invented");
      await opened(folder, async ({ cases }) => {
        expect((await cases.listDocuments("visit")).map(({ id }) => id).sort()).toEqual(
          expected.documents
            .filter(({ kind }) => kind === "visit")
            .map(({ id }) => id)
            .sort(),
        );
      });
    }));
});

describe("a workshop of one's own", () => {
  it("never gets the demo beside its cars, even where it has no settings", () =>
    inFolder(async (folder) => {
      const demoCar = expected.documents.find((document) => document.kind === "car");
      if (demoCar?.kind !== "car") throw new Error("no car");
      const car = { ...demoCar.body, invented: false };
      await opened(folder, ({ cases }) =>
        cases.saveDocument("car", "car-1", car, { expectedVersion: 0, by: "me", at: `${today}T08:00:00Z` }),
      );
      expect(await begin(folder, today)).toBe("own");
      await opened(folder, async ({ cases }) => {
        expect((await cases.listDocuments("car")).length).toBe(1);
        expect(await cases.loadDocument("settings", settingsId)).toBeNull();
      });
    }));
});

describe("real and invented cars", () => {
  const [car] = expected.documents.flatMap((document) => (document.kind === "car" ? [document.body] : []));
  if (!car) throw new Error("no car");
  const real = { ...car, invented: false };
  const nobody = {
    list: async () => [],
    load: async () => null,
    save: async () => ({ kind: "superseded", current: null }) as const,
  };

  it("are refused beside each other over HTTP, and nothing of them is kept", () =>
    inFolder(async (folder) => {
      await begin(folder, today);
      await opened(folder, async ({ cases }) => {
        const photos = {
          receivePhoto: async () => Promise.reject(new Error("none")),
          loadPhoto: async () => null,
          hasPhoto: async () => false,
        };
        const app = buildApp({
          pages: null,
          families: openFamilyShelf(nobody, {}),
          records: { cases, photos, now: () => `${today}T12:00:00Z` },
          today: () => today,
          report: (problem) => {
            throw problem;
          },
        });
        const put = (id: string, body: typeof car) =>
          app.inject({
            method: "PUT",
            url: `/api/documents/car/${id}`,
            headers: { "if-none-match": "*", "content-type": "application/json" },
            payload: JSON.stringify({ by: "E. Tarn", document: formatBody("car", body) }),
          });
        const refused = await put("car-real", real);
        expect(refused.statusCode).toBe(422);
        expect(refused.json()).toMatchObject({ findings: [{ code: "mixed-workshop", path: "document.invented" }] });
        expect((await put("car-invented", car)).statusCode).toBe(201);
        expect((await cases.listDocuments("car")).length).toBe(13);
      });
    }));

  it("are refused in one import", () =>
    inFolder(async (folder) => {
      const own = join(folder, "own");
      const demo = join(folder, "demo");
      const file = join(folder, "demo.export");
      await begin(demo, today);
      expect(await runCommand(demo, "export", "--out", file)).toMatchObject({ status: 0 });
      await opened(own, ({ cases }) =>
        cases.saveDocument("car", "car-1", real, { expectedVersion: 0, by: "me", at: `${today}T08:00:00Z` }),
      );
      const ended = await runCommand(own, "import", file);
      expect(ended.status).toBe(2);
      expect(ended.problems).toContain("mixed-workshop");
      await opened(own, async ({ cases }) => expect((await cases.listDocuments("car")).length).toBe(1));
      expect(await runCommand(join(folder, "fresh"), "import", file)).toMatchObject({ status: 0 });
    }));
});
