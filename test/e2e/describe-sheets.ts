import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, it } from "vitest";
import { closeSessions, launchBrowser } from "../browser-setup/launch.ts";
import { tabThrough } from "./focus.ts";
import { lookAtSheet, type Sheet } from "./look-at-sheet.ts";

/** Looks at each of some sheets in every size and both themes, and goes through it by Tab. */
export const describeSheets = (of: string, sheets: readonly Sheet[]): void => {
  describe(`sheets ${of}`, () => {
    let browser: Browser;
    beforeAll(async () => {
      browser = await launchBrowser();
    });
    afterAll(() => closeSessions(browser));

    it.each(sheets)(
      "$name: its pictures in every size and both themes, nothing for axe to find, no complaint, every stop of Tab seen",
      (sheet) => lookAtSheet(browser, sheet, tabThrough),
    );
  });
};
