import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { launchBrowser, openSession } from "../browser-setup/launch.ts";
import { listenForComplaints, openSheet } from "./open-sheet.ts";
import { SHEETS, SIZES, THEMES } from "./sheets.ts";

const results = fileURLToPath(new URL("../../test-results/sheets", import.meta.url));

describe("every sheet in every size and theme", () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await launchBrowser();
    mkdirSync(results, { recursive: true });
  });
  afterAll(() => browser.close());

  const seen = SIZES.flatMap((size) => THEMES.map((theme) => ({ ...size, theme })));
  it.each(seen)("stands at $width x $height, $theme, and leaves its picture", async (screen) => {
    const session = await openSession(browser, screen);
    for (const { name, path } of SHEETS) {
      const page = await session.newPage();
      const complaints = listenForComplaints(page);
      await openSheet(page, path);
      await page.screenshot({ path: join(results, `${name}-${screen.width}x${screen.height}-${screen.theme}.png`) });
      const refusedOnPurpose = name === "no-such-family";
      expect.soft(refusedOnPurpose ? [] : complaints, name).toEqual([]);
      const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      expect.soft(overflow, `${name} is wider than the screen`).toBeLessThanOrEqual(0);
      await page.close();
    }
    await session.close();
  });
});
