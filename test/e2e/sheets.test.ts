import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { desk, launchBrowser, openSession } from "../browser-setup/launch.ts";
import { findByAxe } from "./axe.ts";
import { listenForComplaints, openSheet, settle } from "./open-sheet.ts";
import { SHEETS, SIZES, THEMES } from "./sheets.ts";

const results = fileURLToPath(new URL("../../test-results/sheets", import.meta.url));
/** The browser itself reports the answer that a family is not there. */
const REFUSED_ON_PURPOSE = "no-such-family";

/** The size between desk and tablet has the same elements and colours as the desk; its pictures are enough. */
const isBetween = ({ width }: { readonly width: number }): boolean => width === 1024;

describe("every sheet in every size and both themes", () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await launchBrowser();
    mkdirSync(results, { recursive: true });
  });
  afterAll(() => browser.close());

  const seen = SIZES.flatMap((size) => SHEETS.map((sheet) => ({ ...size, ...sheet })));
  it.each(seen)("$name at $width x $height: its pictures, nothing for axe to find, no complaint", async (sheet) => {
    const { name, width, height } = sheet;
    const session = await openSession(browser, sheet);
    const page = await session.newPage();
    const complaints = listenForComplaints(page);
    await openSheet(page, sheet.path);
    for (const [turn, theme] of THEMES.entries()) {
      await page.emulateMedia({ colorScheme: theme });
      await settle(page);
      await page.screenshot({ path: join(results, `${name}-${width}x${height}-${theme}.png`) });
      if (!isBetween(sheet)) expect.soft(await findByAxe(page, turn === 0 ? "all" : "contrast"), theme).toEqual([]);
    }
    expect.soft(name === REFUSED_ON_PURPOSE ? [] : complaints).toEqual([]);
    const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(overflow, "wider than the screen").toBeLessThanOrEqual(0);
    await session.close();
  });

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
