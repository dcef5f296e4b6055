import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { AxeResults } from "axe-core";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { desk, launchBrowser, openSession, tablet } from "../browser-setup/launch.ts";
import { openSheet } from "./open-sheet.ts";
import { SHEETS, THEMES } from "./sheets.ts";

const source = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** What axe finds on a page, each with the elements it means. */
const findingsOn = async (page: Page): Promise<readonly string[]> => {
  await page.evaluate(source);
  const { violations } = await page.evaluate<AxeResults>("axe.run(document, { resultTypes: ['violations'] })");
  return violations.map(
    ({ id, help, nodes }) =>
      `${id}: ${help}: ${nodes
        .slice(0, 3)
        .map(({ target }) => target.join(" "))
        .join(" | ")}`,
  );
};

describe("axe finds nothing", () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await launchBrowser();
  });
  afterAll(() => browser.close());

  const seen = [desk, tablet].flatMap((size) => THEMES.map((theme) => ({ ...size, theme })));
  it.each(seen)("at $width x $height, $theme", async (screen) => {
    const session = await openSession(browser, screen);
    const page = await session.newPage();
    for (const { name, path } of SHEETS) {
      await openSheet(page, path);
      expect.soft(await findingsOn(page), name).toEqual([]);
    }
    await session.close();
  });

  it("in the list of keys and in an opened figure", async () => {
    const page = await (await openSession(browser, desk)).newPage();
    await openSheet(page, SHEETS.find(({ name }) => name === "geometry")?.path ?? "/");
    await page.getByText("All inputs").click();
    expect.soft(await findingsOn(page)).toEqual([]);
    await page.keyboard.press("?");
    await page.getByRole("dialog").waitFor();
    expect(await findingsOn(page)).toEqual([]);
  });
});
