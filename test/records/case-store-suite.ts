import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { CaseStore } from "#casework";
import type { ArchiveRepository } from "#records";
import { inventedCar, inventedVisit, makeLook, receivedAt, uuidOf } from "./made-cases.ts";

/** Case storage of some database, empty and open. */
export interface OpenedStore {
  readonly cases: CaseStore;
  readonly archive: ArchiveRepository;
  /** A second way into the same records where the database can have two in one process, else the same. */
  readonly other: CaseStore;
  readonly close: () => Promise<void>;
}

const meta = (expectedVersion: number, by = "MK") => ({ expectedVersion, by, at: receivedAt });

/** What every case store must do, whatever database it stands on. */
export const describeCaseStore = (name: string, open: () => Promise<OpenedStore>): void => {
  describe(`cases in ${name}`, () => {
    let store: OpenedStore;
    beforeEach(async () => {
      store = await open();
    });
    afterEach(() => store.close());

    describe("documents", () => {
      it("keeps every version and gives back the latest to the letter", async () => {
        const first = await store.cases.saveDocument("car", "car-1", inventedCar, meta(0));
        const named = { ...inventedCar, name: "Ouzel saloon, 2024 \u{1f697} „Ø“" };
        const second = await store.cases.saveDocument("car", "car-1", named, meta(1, "RB"));
        expect(first).toEqual({
          saved: { kind: "car", id: "car-1", version: 1, body: inventedCar, by: "MK", at: receivedAt },
        });
        expect(second).toMatchObject({ saved: { version: 2, by: "RB" } });
        expect(await store.cases.loadDocument("car", "car-1")).toMatchObject({ version: 2, body: named });
        expect((await store.cases.loadHistory("car", "car-1")).map(({ version, body }) => [version, body])).toEqual([
          [1, inventedCar],
          [2, named],
        ]);
        expect(await store.cases.loadDocument("car", "car-2")).toBeNull();
        expect(await store.cases.loadHistory("plan", "car-1")).toEqual([]);
      });

      it("shows the second writer what the first one saved, and keeps nothing of the second", async () => {
        await store.cases.saveDocument("car", "car-1", inventedCar, meta(0));
        const winner = { ...inventedCar, name: "winner" };
        await store.cases.saveDocument("car", "car-1", winner, meta(1, "RB"));
        const loser = await store.cases.saveDocument("car", "car-1", { ...inventedCar, name: "loser" }, meta(1));
        expect(loser).toMatchObject({ conflict: { version: 2, body: { name: "winner" }, by: "RB" } });
        const asNew = await store.cases.saveDocument("car", "car-1", { ...inventedCar, name: "new" }, meta(0));
        expect(asNew).toMatchObject({ conflict: { version: 2 } });
        expect(await store.cases.loadHistory("car", "car-1")).toHaveLength(2);
      });

      it("takes what is there already as saved, as after a lost answer", async () => {
        await store.cases.saveDocument("car", "car-1", inventedCar, meta(0));
        const again = await store.cases.saveDocument("car", "car-1", inventedCar, meta(0));
        expect(again).toMatchObject({ saved: { version: 1 } });
        expect(await store.cases.loadHistory("car", "car-1")).toHaveLength(1);
      });

      it("lets exactly one of many simultaneous writers win, in this process and beside it", async () => {
        for (const version of [0, 1]) {
          const writers = Array.from({ length: 20 }, (_, writer) =>
            (writer % 2 === 0 ? store.cases : store.other).saveDocument(
              "car",
              "car-1",
              { ...inventedCar, name: `writer ${writer} of ${version}` },
              meta(version),
            ),
          );
          const outcomes = await Promise.all(writers);
          expect(outcomes.filter((outcome) => "saved" in outcome)).toHaveLength(1);
          const latest = await store.other.loadDocument("car", "car-1");
          expect(outcomes.find((outcome) => "saved" in outcome)).toEqual({ saved: latest });
          expect(latest?.version).toBe(version + 1);
        }
      });

      it("lists documents by id and visits of a car by day, also where a visit was moved", async () => {
        for (const id of ["car-2", "car-1"]) await store.cases.saveDocument("car", id, inventedCar, meta(0));
        const visit = (id: string, date: string, car = "car-1") =>
          store.cases.saveDocument("visit", id, { ...inventedVisit, date, car }, meta(0));
        await visit("b", "2031-02-01");
        await visit("a", "2031-02-01");
        await visit("c", "2030-12-31");
        await visit("d", "2031-01-01", "car-2");
        expect((await store.cases.listDocuments("car")).map(({ id }) => id)).toEqual(["car-1", "car-2"]);
        expect((await store.cases.listVisits("car-1")).map(({ id }) => id)).toEqual(["c", "a", "b"]);
        await store.cases.saveDocument("visit", "d", { ...inventedVisit, date: "2030-01-01" }, meta(1));
        expect((await store.cases.listVisits("car-1")).map(({ id }) => id)).toEqual(["d", "c", "a", "b"]);
        expect(await store.cases.listVisits("car-2")).toEqual([]);
      });
    });

    describe("looks", () => {
      it("gives back every kind of look to the double and in its order", async () => {
        const looks = [
          ...Array.from({ length: 12 }, (_, n) => makeLook(n)),
          makeLook(12, { content: { kind: "withdrawn", look: uuidOf(1) }, note: "line\nend", photo: "a".repeat(64) }),
          makeLook(13, {
            content: { kind: "reading", quantity: "toe", value: -0.1 / 3, u: Number.MIN_VALUE, point: null },
          }),
        ];
        const outcomes = await store.cases.appendLooks(looks, receivedAt);
        expect(outcomes.map((outcome) => ("stored" in outcome ? outcome.stored.sequence : null))).toEqual(
          looks.map((_, index) => index + 1),
        );
        const kept = await store.cases.loadLooks({ visit: "visit-1" });
        expect(kept).toEqual(
          looks.map((look, index) => ({ ...look, sequence: index + 1, receivedAt, clockOff: false })),
        );
        expect(await store.cases.loadLooks({ car: "car-1" })).toEqual(kept);
        expect(await store.cases.loadLooks({ car: "car-2" })).toEqual([]);
      });

      it("knows a look sent twice, alone, in a batch and twice in one batch", async () => {
        const [one, two, three] = [makeLook(1), makeLook(2), makeLook(3)];
        await store.cases.appendLooks([one], receivedAt);
        const outcomes = await store.cases.appendLooks([two, one, two, three], "2031-05-14T10:00:00.000Z");
        expect(outcomes.map((outcome) => Object.keys(outcome)[0])).toEqual(["stored", "known", "known", "stored"]);
        expect(outcomes[1]).toMatchObject({ known: { sequence: 1, receivedAt } });
        expect((await store.cases.loadLooks({ car: "car-1" })).map(({ sequence }) => sequence)).toEqual([1, 2, 3]);
      });

      it("takes a figure that came back through another unit as the same", async () => {
        const look = makeLook(0);
        if (look.content.kind !== "reading") throw new Error("Look 0 is no reading.");
        await store.cases.appendLooks([look], receivedAt);
        const value = look.content.value * (1 + 4 * Number.EPSILON);
        const again = { ...look, content: { ...look.content, value } };
        expect(Object.keys((await store.cases.appendLooks([again], receivedAt))[0] ?? {})).toEqual(["known"]);
        const another = { ...look, content: { ...look.content, value: look.content.value + 1e-5 } };
        expect(Object.keys((await store.cases.appendLooks([another], receivedAt))[0] ?? {})).toEqual(["clash"]);
      });

      it("refuses another look under the same id and loses neither", async () => {
        await store.cases.appendLooks([makeLook(1)], receivedAt);
        const [clash, stored] = await store.cases.appendLooks([makeLook(1, { who: "RB" }), makeLook(2)], receivedAt);
        expect(clash).toMatchObject({ clash: { who: "MK", sequence: 1 } });
        expect(stored).toMatchObject({ stored: { sequence: 2 } });
      });

      it.each([
        ["2030-05-14T09:30:00Z", true],
        ["2032-05-14T09:30:00Z", true],
        ["2031-05-13T09:31:00Z", false],
        ["2031-05-15T11:29:00+02:00", false],
      ])("keeps a look made at %s and says whether that clock is off: %s", async (at, off) => {
        await store.cases.appendLooks([makeLook(1, { at })], receivedAt);
        expect(await store.cases.loadLooks({ car: "car-1" })).toMatchObject([{ at, clockOff: off }]);
      });

      it("numbers without a gap, whoever writes at once and whatever is refused", async () => {
        const writers = Array.from({ length: 30 }, (_, writer) =>
          (writer % 2 === 0 ? store.cases : store.other).appendLooks(
            [makeLook(2 * writer), makeLook(2 * writer + 1), makeLook(writer)],
            receivedAt,
          ),
        );
        await Promise.all(writers);
        const kept = await store.cases.loadLooks({ car: "car-1" });
        expect(kept.map(({ sequence }) => sequence)).toEqual(Array.from({ length: 60 }, (_, index) => index + 1));
        expect(new Set(kept.map(({ id }) => id)).size).toBe(60);
      });

      it("takes a batch larger than one statement", async () => {
        const looks = Array.from({ length: 1201 }, (_, n) => makeLook(n, { note: null }));
        await store.cases.appendLooks(looks, receivedAt);
        expect((await store.cases.loadLooks({ car: "car-1" })).map(({ id }) => id)).toEqual(looks.map(({ id }) => id));
      });
    });

    describe("whole records", () => {
      const fill = async (): Promise<void> => {
        await store.cases.saveDocument("car", "car-1", inventedCar, meta(0));
        await store.cases.saveDocument("car", "car-1", { ...inventedCar, name: "second" }, meta(1));
        await store.cases.appendLooks([makeLook(2), makeLook(1)], receivedAt);
      };
      const readOut = async () => {
        const documents: Parameters<Parameters<ArchiveRepository["readAll"]>[0]["document"]>[0][] = [];
        const looks: Parameters<Parameters<ArchiveRepository["readAll"]>[0]["look"]>[0][] = [];
        await store.archive.readAll({
          document: async (document) => void documents.push(document),
          look: async (look) => void looks.push(look),
        });
        return { documents, looks };
      };

      it("reads everything out in its order, and puts it in again without a change", async () => {
        await fill();
        const all = await readOut();
        expect(all.documents.map(({ version }) => version)).toEqual([1, 2]);
        expect(all.looks.map(({ id }) => id)).toEqual([uuidOf(2), uuidOf(1)]);
        expect(await store.archive.putAll(all)).toEqual({
          added: { documents: 0, looks: 0 },
          known: { documents: 2, looks: 2 },
        });
        expect(await readOut()).toEqual(all);
      });

      it("adds what is newer, keeps who and when", async () => {
        await fill();
        const { documents } = await readOut();
        const latest = documents.at(-1);
        if (latest === undefined) throw new Error("Nothing was read out.");
        const third = { ...latest, version: 3, by: "RB", at: "2020-01-01T00:00:00Z" };
        const look = { ...makeLook(3), receivedAt: "2020-01-01T00:00:00Z", clockOff: true };
        expect(await store.archive.putAll({ documents: [third], looks: [look] })).toMatchObject({
          added: { documents: 1, looks: 1 },
        });
        expect(await store.cases.loadDocument("car", "car-1")).toEqual(third);
        expect((await store.cases.loadLooks({ car: "car-1" })).at(-1)).toEqual({ ...look, sequence: 3 });
      });

      it("puts nothing in where anything clashes, and names it", async () => {
        await fill();
        const { documents, looks } = await readOut();
        const before = await readOut();
        const changed = documents.map((document) => ({ ...document, by: "somebody else" }));
        const far = documents.map((document) => ({ ...document, id: "car-9", version: document.version + 1 }));
        const fresh = { ...makeLook(7), receivedAt, clockOff: false };
        const outcome = await store.archive.putAll({
          documents: [...changed, ...far],
          looks: [fresh, ...looks.map((look) => ({ ...look, who: "somebody else" }))],
        });
        expect(outcome).toEqual({
          clashes: [
            { what: "car", id: "car-1", version: 1 },
            { what: "car", id: "car-1", version: 2 },
            { what: "car", id: "car-9", version: 2 },
            { what: "car", id: "car-9", version: 3 },
            { what: "look", id: uuidOf(2), version: null },
            { what: "look", id: uuidOf(1), version: null },
          ],
        });
        expect(await readOut()).toEqual(before);
        expect(await store.cases.appendLooks([makeLook(8)], receivedAt)).toMatchObject([{ stored: { sequence: 3 } }]);
      });
    });
  });
};
