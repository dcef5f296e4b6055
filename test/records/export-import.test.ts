import { createHash } from "node:crypto";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { openRecords } from "#records";
import { makeFolder } from "./data-folders.ts";
import { fillFolder, readFolder } from "./filled-folder.ts";
import { makeLook, receivedAt, seededNumbers } from "./made-cases.ts";
import { runCommand } from "./record-commands.ts";

const seed = 77;

/** Where nothing is yet. */
const nowhere = (): string => join(makeFolder(), "data");

/** An export in a file, and its text. */
const exportTo = async (folder: string): Promise<{ readonly file: string; readonly text: string }> => {
  const file = join(makeFolder(), "out.jsonl");
  const ended = await runCommand(folder, "export", "--out", file);
  expect(ended).toMatchObject({ status: 0, output: "" });
  return { file, text: readFileSync(file, "utf8") };
};

/** The lines between the first one, which holds the time, and the last one, which holds the digest. */
const bodyOf = (text: string): readonly string[] => text.trimEnd().split("\n").slice(1, -1);

/** A file with another text, whose last line is right for it. */
const withDigest = (lines: readonly string[], tally: string): string => {
  const before = `${lines.join("\n")}\n`;
  const sha256 = createHash("sha256").update(before).digest("hex");
  return `${before}{"end":{${tally},"sha256":"${sha256}"}}\n`;
};

const importText = async (data: string, text: string | Buffer) => {
  const file = join(makeFolder(), "in.jsonl");
  writeFileSync(file, text);
  return runCommand(data, "import", file);
};

describe("export and import", { timeout: 60_000 }, () => {
  it("carry everything into an empty folder and out again, line for line", async () => {
    const folder = await fillFolder();
    const { file, text } = await exportTo(folder);
    expect(JSON.parse(text.trimEnd().split("\n").at(-1) ?? "")).toMatchObject({
      end: { documents: 5, looks: 41, families: 1, photos: 2 },
    });
    const data = nowhere();
    const ended = await runCommand(data, "import", file);
    expect(ended).toMatchObject({ status: 0, problems: "" });
    expect(ended.output).toBe("Imported: 5 versions of documents, 41 looks, 1 family, 2 photos added.\n");
    expect(await readFolder(data)).toEqual(await readFolder(folder));
    expect(bodyOf((await exportTo(data)).text)).toEqual(bodyOf(text));
  });

  it("write the same to standard output", async () => {
    const folder = await fillFolder();
    const ended = await runCommand(folder, "export");
    expect(ended.status).toBe(0);
    expect(bodyOf(ended.output)).toEqual(bodyOf((await exportTo(folder)).text));
  });

  it("importing again changes nothing, and newer work stays", async () => {
    const folder = await fillFolder();
    const { file } = await exportTo(folder);
    const before = await readFolder(folder);
    const again = await runCommand(folder, "import", file);
    expect(again).toMatchObject({ status: 0, output: expect.stringContaining("46 of documents and looks were here") });
    expect(await readFolder(folder)).toEqual(before);
    const records = await openRecords(folder);
    await records.cases.appendLooks([makeLook(99)], receivedAt);
    await records.close();
    expect((await runCommand(folder, "import", file)).status).toBe(0);
    expect((await readFolder(folder)).looks).toHaveLength(42);
  });

  it("a file cut anywhere is refused before anything is written", async () => {
    const random = seededNumbers(seed);
    const { text } = await exportTo(await fillFolder());
    const whole = Buffer.from(text);
    const places = [
      0,
      1,
      whole.length - 2,
      ...text.split("\n").map((_, line, lines) => Buffer.byteLength(lines.slice(0, line).join("\n"))),
      ...Array.from({ length: 40 }, () => Math.floor(random() * (whole.length - 1))),
    ];
    for (const place of places.filter((one) => one < whole.length - 1)) {
      const data = nowhere();
      const ended = await importText(data, whole.subarray(0, place));
      expect([ended.status, existsSync(data)], `cut at ${place}`).toEqual([2, false]);
      expect(ended.problems, `cut at ${place}`).toMatch(/\[export-cut\]/);
    }
  });

  it("a file with any byte changed is refused before anything is written", async () => {
    const random = seededNumbers(seed + 1);
    const { text } = await exportTo(await fillFolder());
    for (let round = 0; round < 60; round++) {
      const bytes = Buffer.from(text);
      const place = Math.floor(random() * (bytes.length - 1));
      bytes[place] = ((bytes[place] ?? 0) + 1 + Math.floor(random() * 255)) % 256;
      const data = nowhere();
      const ended = await importText(data, bytes);
      expect([ended.status, existsSync(data)], `changed at ${place}`).toEqual([2, false]);
    }
  });

  it("says line and key of everything that is wrong in a file somebody has edited", async () => {
    const { text } = await exportTo(await fillFolder());
    const lines = text.trimEnd().split("\n").slice(0, -1);
    const edited = lines.map((line) => line.replace('"place":"front-left/', '"plaice":"front-left/')).slice(0, 8);
    const ended = await importText(nowhere(), withDigest(edited, '"documents":5,"looks":2,"families":0,"photos":0'));
    expect(ended.status).toBe(2);
    expect(ended.problems).toContain("line[7].look.plaice  [unknown-key]");
    expect(ended.problems).toContain("line[8].look.plaice  [unknown-key]");
  });

  it.each([
    [
      "counts that are not those of the file",
      ['{"underbench_export":1,"made_at":"2031-01-01T00:00:00Z"}'],
      "1",
      "export-altered",
    ],
    ["a newer form", ['{"underbench_export":2,"made_at":"2031-01-01T00:00:00Z","more":1}'], "0", "export-newer"],
    ["another kind of file", ['{"name": "a sheet"}'], "0", "unknown-key"],
    ["no first line", ['{"family":{"id":"a","text":"{}"}}'], "0", "export-altered"],
    [
      "a photo of other bytes",
      [
        '{"underbench_export":1,"made_at":"2031-01-01T00:00:00Z"}',
        `{"photo":{"sha256":"${"a".repeat(64)}","bytes":3,"base64":"AAAA"}}`,
      ],
      "0",
      "export-altered",
    ],
  ])("refuses %s", async (_, lines, looks, code) => {
    const data = nowhere();
    const text = withDigest(lines, `"documents":0,"looks":${looks},"families":0,"photos":0`);
    const ended = await importText(data, text);
    expect([ended.status, existsSync(data)]).toEqual([2, false]);
    expect(ended.problems).toContain(`[${code}]`);
  });

  it("refuses whole what says otherwise than the records, and names it", async () => {
    const folder = await fillFolder();
    const { text } = await exportTo(folder);
    const data = nowhere();
    const other = await openRecords(data);
    await other.cases.appendLooks([makeLook(3, { who: "somebody else" })], receivedAt);
    await other.close();
    const before = await readFolder(data);
    const ended = await importText(data, text);
    expect(ended.status).toBe(2);
    expect(ended.problems).toContain("[export-clash]");
    expect(ended.problems).toContain(makeLook(3).id);
    expect(await readFolder(data)).toEqual(before);
  });

  it("writes over no file, reads no file that is not there, and wants a data folder to export", async () => {
    const folder = await fillFolder();
    const { file } = await exportTo(folder);
    const before = readFileSync(file);
    expect((await runCommand(folder, "export", "--out", file)).problems).toContain("[file-exists]");
    expect(readFileSync(file).equals(before)).toBe(true);
    for (const words of [
      ["import", join(folder, "absent")],
      ["export", "--data", join(folder, "absent")],
      ["export", "--out", join(folder, "no", "o")],
    ]) {
      const ended = await runCommand(folder, ...words);
      expect([ended.status, ended.output]).toEqual([2, ""]);
      expect(ended.problems).toContain("[no-file]");
    }
    expect(existsSync(join(folder, "absent"))).toBe(false);
  });

  it("leaves out a photo that is damaged, says so, and exports the rest", async () => {
    const folder = await fillFolder();
    const { photos } = await readFolder(folder);
    const hash = photos[0] ?? "";
    writeFileSync(join(folder, "photos", hash.slice(0, 2), hash), "rotten");
    const file = join(makeFolder(), "out.jsonl");
    const ended = await runCommand(folder, "export", "--out", file);
    expect(ended.status).toBe(2);
    expect(ended.problems).toContain("[photo-damaged]");
    expect((await runCommand(nowhere(), "import", file)).output).toContain("41 looks, 1 family, 1 photo added");
  });

  it("reads what is whole out of damaged records with --salvage, and the result can be imported", async () => {
    const folder = await fillFolder();
    const path = join(folder, "records.db");
    const bytes = readFileSync(path);
    writeFileSync(path, bytes.subarray(0, bytes.length - 1));
    const file = join(makeFolder(), "out.jsonl");
    expect((await runCommand(folder, "export", "--out", file)).problems).toContain("[records-damaged]");
    expect(existsSync(file)).toBe(false);
    const ended = await runCommand(folder, "export", "--salvage", "--out", file);
    expect(ended).toMatchObject({
      status: 0,
      problems: expect.stringMatching(/\d+ looks that were acknowledged cannot be read|Every look/),
    });
    expect((await runCommand(nowhere(), "import", file)).status).toBe(0);
  });
});
