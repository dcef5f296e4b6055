import { mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { openFamilyFiles } from "./family-files.ts";

describe("families as files", () => {
  let folder: string;
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), "families-"));
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  it("keeps a document and gives it back as it was written", async () => {
    const store = await openFamilyFiles(join(folder, "new", "deep"));
    const text = '{"name": "Ø"}\n';
    const outcome = await store.save("one-line", text, null);
    const kept = await (await openFamilyFiles(join(folder, "new", "deep"))).load("one-line");
    expect(kept).toEqual({ id: "one-line", text, version: outcome.kind === "kept" ? outcome.version : "" });
    expect(await store.load("absent")).toBeNull();
  });

  it("lists in the order of ids and leaves strange files alone", async () => {
    const store = await openFamilyFiles(folder);
    await store.save("b", "{}", null);
    await store.save("a", "{}", null);
    writeFileSync(join(folder, "notes.txt"), "x");
    writeFileSync(join(folder, "Odd Name.family.json"), "{}");
    expect((await store.list()).map(({ id }) => id)).toEqual(["a", "b"]);
  });

  it("holds up a writer who has not seen the latest, and shows it", async () => {
    const store = await openFamilyFiles(folder);
    const first = await store.save("a", "1", null);
    if (first.kind !== "kept") throw new Error("the first save was held up");
    const winner = await store.save("a", "2", first.version);
    expect(winner.kind).toBe("kept");
    const loser = await store.save("a", "3", first.version);
    expect(loser).toMatchObject({ kind: "superseded", current: { text: "2" } });
    expect(await store.save("a", "4", null)).toMatchObject({ kind: "superseded", current: { text: "2" } });
    expect(await store.save("gone", "5", first.version)).toEqual({ kind: "superseded", current: null });
    expect((await store.load("a"))?.text).toBe("2");
  });

  it("takes the same text sent again, as after a lost answer", async () => {
    const store = await openFamilyFiles(folder);
    const first = await store.save("a", "1", null);
    expect(await store.save("a", "1", null)).toEqual(first);
  });

  it("lets exactly one of many simultaneous writers win", async () => {
    const store = await openFamilyFiles(folder);
    const outcomes = await Promise.all(Array.from({ length: 20 }, (_, writer) => store.save("a", `${writer}`, null)));
    expect(outcomes.filter(({ kind }) => kind === "kept")).toHaveLength(1);
    expect((await store.load("a"))?.text).toBe("0");
  });

  it("leaves no half-written file behind and clears what a killed process left", async () => {
    writeFileSync(join(folder, ".a.family.json.1-1.part"), '{"na');
    const store = await openFamilyFiles(folder);
    await store.save("a", "{}", null);
    expect(readdirSync(folder)).toEqual(["a.family.json"]);
  });

  it("refuses an id that could leave the folder", async () => {
    const store = await openFamilyFiles(folder);
    await expect(store.load("../a")).rejects.toThrow("Not an id");
    await expect(store.save("a/b", "{}", null)).rejects.toThrow("Not an id");
  });
});
