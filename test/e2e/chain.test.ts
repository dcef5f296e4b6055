import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { openPage } from "../browser-setup/fresh-page.ts";
import { desk } from "../browser-setup/launch.ts";
import { doorSays, saveSheet, sheetWith } from "./chain-family.ts";
import { openSheet, settle } from "./open-sheet.ts";
import { flatten, readPdfWords } from "./pdf-words.ts";
import { TORN_BUSH } from "./sheets.ts";

const ID = "chain-saloon";
const NAME = "Chain saloon";
const readSheet = async (page: Page) => {
  await openSheet(page, `/families/${ID}/geometry?marks=${TORN_BUSH}:torn-3&at=${TORN_BUSH}`);
  await settle(page);
  const download = page.waitForEvent("download");
  await page.getByRole("button", { name: "Print the sheet" }).click();
  const pdf = readFileSync(await (await download).path());
  return {
    figure: await page.locator(".figure-huge").textContent(),
    views: await page.locator(".geometry-views svg").first().innerHTML(),
    curves: await page.locator(".geometry-curves svg").first().innerHTML(),
    printed: flatten(readPdfWords(pdf)),
  };
};

describe("one rubber rate changed in a family's file", () => {
  it("changes figure, sentence, curve and print, each equal to the door's answer to the digits shown", async () => {
    const page = await openPage(desk);
    const before = sheetWith(ID, NAME, 1);
    const version = await saveSheet(before, { "if-none-match": "*" });
    const first = await readSheet(page);
    const after = sheetWith(ID, NAME, 2);
    await saveSheet(after, { "if-match": version });
    const second = await readSheet(page);

    for (const [sheet, shown] of [
      [before, first],
      [after, second],
    ] as const) {
      const said = await doorSays(sheet);
      expect(shown.figure).toBe(said);
      expect(shown.views).toContain(`${said} further`);
      expect(shown.curves).toContain(said);
      expect(shown.printed).toContain(said);
      expect(shown.printed).toContain(`${said} further`);
    }
    expect(second.figure).not.toBe(first.figure);
    expect(second.curves).not.toBe(first.curves);
  });
});
