import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { join, relative } from "node:path";
import { describe, expect, it } from "vitest";
import { openRecords } from "#records";
import { makeFolder } from "./data-folders.ts";
import { fillFolder, readFolder } from "./filled-folder.ts";
import { makeLook, receivedAt, seededNumbers } from "./made-cases.ts";
import { runCommand } from "./record-commands.ts";

const seed = 5;

const filesIn = (folder: string): readonly string[] =>
  readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => statSync(join(folder, name)).isFile())
    .map((name) => relative(folder, join(folder, name)))
    .toSorted();

const nowhere = (): string => join(makeFolder(), "data");

const backUp = async (): Promise<{ readonly folder: string; readonly backup: string }> => {
  const folder = await fillFolder();
  const backup = join(makeFolder(), "backup");
  expect(await runCommand(folder, "backup", backup)).toMatchObject({ status: 0, problems: "" });
  return { folder, backup };
};

describe("backup and restore", { timeout: 60_000 }, () => {
  it("carry everything into an empty data folder", async () => {
    const { folder, backup } = await backUp();
    expect(filesIn(backup).filter((name) => !name.startsWith("photos"))).toEqual([
      "backup.json",
      "own-line.family.json",
      "records.db",
    ]);
    const data = nowhere();
    const ended = await runCommand(data, "restore", backup);
    expect(ended).toMatchObject({ status: 0, problems: "" });
    expect(ended.output).toContain("5 versions of documents, 41 looks, 1 family, 2 photos");
    expect(await readFolder(data)).toEqual(await readFolder(folder));
    expect(filesIn(data).filter((name) => /restoring|part/.test(name))).toEqual([]);
  });

  it("take the records as they stand while somebody writes", async () => {
    const folder = await fillFolder();
    const records = await openRecords(folder);
    const backup = join(makeFolder(), "backup");
    const saving = runCommand(folder, "backup", backup);
    for (let n = 100; n < 160; n++) {
      await records.cases.appendLooks([makeLook(n)], receivedAt);
      await new Promise((resolve) => setImmediate(resolve));
    }
    expect((await saving).status).toBe(0);
    await records.close();
    const data = nowhere();
    expect((await runCommand(data, "restore", backup)).status).toBe(0);
    const [kept, all] = [(await readFolder(data)).looks, (await readFolder(folder)).looks];
    expect(kept.length).toBeGreaterThanOrEqual(41);
    expect(kept).toEqual(all.slice(0, kept.length));
  });

  it("write into nothing but an empty folder", async () => {
    const { folder, backup } = await backUp();
    const before = filesIn(backup);
    expect(await runCommand(folder, "backup", backup)).toMatchObject({
      status: 2,
      problems: expect.stringContaining("[folder-not-empty]"),
    });
    const files = filesIn(folder);
    expect(await runCommand(folder, "restore", backup)).toMatchObject({
      status: 2,
      problems: expect.stringContaining("[folder-not-empty]"),
    });
    expect([filesIn(backup), filesIn(folder)]).toEqual([before, files]);
    expect((await runCommand(nowhere(), "backup", nowhere())).problems).toContain("[no-file]");
  });

  it("refuse a backup that is not finished", async () => {
    const { backup } = await backUp();
    rmSync(join(backup, "backup.json"));
    const data = nowhere();
    expect(await runCommand(data, "restore", backup)).toMatchObject({
      status: 2,
      problems: expect.stringContaining("[not-a-backup]"),
    });
    for (const text of ["", "{}", '{"underbench_backup": 1', "[]"]) {
      writeFileSync(join(backup, "backup.json"), text);
      expect((await runCommand(data, "restore", backup)).problems).toContain("[not-a-backup]");
    }
    expect(existsSync(data)).toBe(false);
  });

  it("refuse a backup of which any file was cut, changed or lost, before anything is written", async () => {
    const random = seededNumbers(seed);
    const { backup } = await backUp();
    const spoil: readonly ((path: string) => void)[] = [
      (path) => rmSync(path),
      (path) => writeFileSync(path, readFileSync(path).subarray(0, Math.floor(random() * statSync(path).size))),
      (path) => {
        const bytes = readFileSync(path);
        const place = Math.floor(random() * bytes.length);
        bytes[place] = (bytes[place] ?? 0) ^ (1 + Math.floor(random() * 255));
        writeFileSync(path, bytes);
      },
    ];
    for (const name of filesIn(backup).filter((one) => one !== "backup.json")) {
      for (const change of spoil) {
        const copy = join(makeFolder(), "backup");
        cpSync(backup, copy, { recursive: true });
        change(join(copy, name));
        const data = nowhere();
        const ended = await runCommand(data, "restore", copy);
        expect([ended.status, existsSync(data)], name).toEqual([2, false]);
        expect(ended.problems).toMatch(/\[(backup-damaged|records-damaged)\]/);
      }
    }
  });

  it("keep a folder closed in which a restore was broken off", async () => {
    const { backup } = await backUp();
    const data = nowhere();
    mkdirSync(data);
    cpSync(join(backup, "photos"), join(data, "photos"), { recursive: true });
    writeFileSync(join(data, "restoring"), "");
    expect((await runCommand(data, "export")).problems).toContain("[restore-unfinished]");
  });

  it("leave out a photo that is damaged, say so, and keep the rest", async () => {
    const folder = await fillFolder();
    const hash = (await readFolder(folder)).photos[1] ?? "";
    writeFileSync(join(folder, "photos", hash.slice(0, 2), hash), "rotten");
    const backup = join(makeFolder(), "backup");
    const ended = await runCommand(folder, "backup", backup);
    expect([ended.status, ended.problems.includes(hash)]).toEqual([2, true]);
    expect((await runCommand(nowhere(), "restore", backup)).output).toContain("1 photo");
  });

  it.each(["export", "import", "backup", "restore"])("%s explains itself", async (name) => {
    const ended = await runCommand(nowhere(), name, "--help");
    expect([ended.status, ended.problems]).toEqual([0, ""]);
    expect(ended.output).toContain(`Usage: underbench ${name}`);
    expect(ended.output).toContain("Exit status");
  });
});
