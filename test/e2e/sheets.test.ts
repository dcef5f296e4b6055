import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { closeSessions, desk, launchBrowser, openSession } from "../browser-setup/launch.ts";
import { findByAxe } from "./axe.ts";
import { tabThrough } from "./focus.ts";
import { lookAtSheet } from "./look-at-sheet.ts";
import { openSheet } from "./open-sheet.ts";
import { SHEETS } from "./sheets.ts";

describe("every sheet in every size and both themes", () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await launchBrowser();
  });
  afterAll(() => closeSessions(browser));

  it.each(SHEETS)(
    "$name: its pictures in every size and both themes, nothing for axe to find, no complaint, every stop of Tab seen",
    (sheet) => lookAtSheet(browser, sheet, tabThrough),
  );

  it("leaves axe nothing in the list of keys and in an opened figure", async () => {
    const page = await (await openSession(browser, desk)).newPage();
    await openSheet(page, SHEETS.find(({ name }) => name === "geometry")?.path ?? "/");
    await page.getByText("All inputs").click();
    expect.soft(await findByAxe(page)).toEqual([]);
    await page.keyboard.press("?");
    await page.getByRole("dialog").waitFor();
    expect(await findByAxe(page)).toEqual([]);
  });
});
