import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { findAmbientUses } from "./ambient.ts";
import { coreFolders, listFiles, repository } from "./source-files.ts";

const whatIn = (text: string): readonly string[] => findAmbientUses("planted.ts", text).map(({ what }) => what);

describe("core knows neither clock nor chance", () => {
  it.each([
    ["export const now = Date.now();", "Date"],
    ["export const now = new Date();", "Date"],
    ["export const when = (day: Date): string => String(day);", "Date"],
    ["export const t = performance.now();", "performance"],
    ["export const r = Math.random();", "Math.random"],
    ["export const draw = Math.random;", "Math.random"],
    ['export const r = Math["random"]();', "Math[...]"],
    ["const { random } = Math;\nexport const r = random();", "Math as a value"],
    ['console.warn("seen");', "console"],
    ["export const id = crypto.randomUUID();", "crypto"],
    ["export const clock = { Date };", "Date"],
    ["setTimeout(() => undefined, 1);", "setTimeout"],
    ["export const all = globalThis;", "globalThis"],
  ])("catches %s", (text, what) => {
    expect(whatIn(text)).toContain(what);
  });

  it("lets keys and members of the same name be", () => {
    expect(
      whatIn("export const sheet = { Date: 1, console: 2 };\nexport const d = sheet.Date + sheet.console;"),
    ).toEqual([]);
    expect(whatIn("export const sd = (process: { readonly sd: number }): number => process.sd;")).toEqual([]);
    expect(whatIn("// Date and Math.random are named here\nexport const s = 'Date.now()';")).toEqual([]);
  });

  it("lets a report carry a stated moment, never the present one", () => {
    const moment = "export const day = new Date(Date.UTC(2000, 0, 1));";
    expect(findAmbientUses("planted.ts", moment, true)).toEqual([]);
    expect(findAmbientUses("planted.ts", moment)).toHaveLength(2);
    expect(
      findAmbientUses("planted.ts", "export const now = new Date();\nexport const t = Date.now();", true),
    ).toHaveLength(2);
  });

  it("finds none in the core folders", () => {
    const files = coreFolders
      .flatMap((folder) => listFiles(join(repository, "src", folder), repository))
      .filter((file) => /\.tsx?$/.test(file) && !/\.test\.tsx?$/.test(file));
    expect(files.length).toBeGreaterThan(0);
    expect(
      files.flatMap((file) =>
        findAmbientUses(file, readFileSync(join(repository, file), "utf8"), file.startsWith("src/report/")),
      ),
    ).toEqual([]);
  });
});
