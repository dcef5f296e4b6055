import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { launchBrowser, openSession, tablet } from "../browser-setup/launch.ts";
import { findByAxe } from "./axe.ts";
import { walkToFindings } from "./cases-first-half.ts";
import { Entries } from "./entries.ts";
import { listenForComplaints, openSheet, settle } from "./open-sheet.ts";
import { SIZES, THEMES } from "./sheets.ts";
import { overlapping, pressable, small } from "./thumb.ts";

const results = fileURLToPath(new URL("../../test-results/sheets", import.meta.url));

/** Pages of a case by the name of their pictures; the last part of their address. */
const PAGES = [
  { name: "case-enquiry", path: "enquiry" },
  { name: "case-car", path: "car" },
  { name: "case-readings", path: "readings" },
  { name: "case-underside", path: "underside" },
  { name: "case-corner", path: "underside/rear-left" },
  { name: "case-corner-selected", path: "underside/rear-left?at=rear-left/trailing-link/inner-bush" },
  { name: "case-corner-reading", path: "underside/front-left?at=front-left/disc/thickness" },
  { name: "case-axle", path: "underside/front" },
] as const;

describe("the sheets of a case", () => {
  let browser: Browser;
  let visit: string;
  beforeAll(async () => {
    browser = await launchBrowser();
    mkdirSync(results, { recursive: true });
    const page = await (await openSession(browser, tablet)).newPage();
    await walkToFindings(new Entries(page));
    visit = page.url().replace(/^.*(\/cases\/[^/]+)\/.*$/, "$1");
  });
  afterAll(() => browser.close());

  const open = async (page: Page, path: string): Promise<void> => openSheet(page, `${visit}/${path}`);

  const seen = SIZES.flatMap((size) => PAGES.map((sheet) => ({ ...size, ...sheet })));
  it.each(seen)("$name at $width x $height: its pictures, nothing for axe to find, no complaint", async (sheet) => {
    const session = await openSession(browser, sheet);
    const page = await session.newPage();
    const complaints = listenForComplaints(page);
    await open(page, sheet.path);
    for (const [turn, theme] of THEMES.entries()) {
      await page.emulateMedia({ colorScheme: theme });
      await settle(page);
      await page.screenshot({ path: join(results, `${sheet.name}-${sheet.width}x${sheet.height}-${theme}.png`) });
      if (sheet.width !== 1024) expect.soft(await findByAxe(page, turn === 0 ? "all" : "contrast"), theme).toEqual([]);
    }
    expect.soft(complaints).toEqual([]);
    const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(overflow, "wider than the screen").toBeLessThanOrEqual(0);
    await session.close();
  });

  it.each(PAGES)(
    "$name on an upright tablet: nothing to press overlaps, everything is as large as a thumb",
    async ({ path }) => {
      const session = await openSession(browser, tablet);
      const page = await session.newPage();
      await open(page, path);
      for (const part of [".head", ".drawing", ".margin"]) {
        const boxes = await pressable(page, part);
        expect.soft(overlapping(boxes), part).toEqual([]);
        expect.soft(small(boxes), part).toEqual([]);
      }
      await session.close();
    },
  );

  it("the number pad types into the field under the thumb and goes on to the next", async () => {
    const session = await openSession(browser, tablet);
    const page = await session.newPage();
    await open(page, "readings");
    const field = page.getByLabel("Front left, tread, inner, mm", { exact: true });
    await field.tap();
    for (const key of ["4", "point", "6"]) await page.getByRole("button", { name: key, exact: true }).tap();
    expect(await field.inputValue()).toBe("4.6");
    const boxes = await pressable(page, ".margin");
    expect.soft(overlapping(boxes)).toEqual([]);
    expect.soft(small(boxes)).toEqual([]);
    expect.soft(await findByAxe(page)).toEqual([]);
    await page.screenshot({ path: join(results, "case-number-pad-820x1180-light.png") });
    await page.getByRole("button", { name: "Record, next" }).tap();
    const focused = await page.evaluate(() => document.activeElement?.getAttribute("aria-label"));
    expect(focused).toBe("Front left, tread, middle, mm");
    await session.close();
  });
});
