import { readFileSync } from "node:fs";
import type { Locator, Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { openPage } from "../browser-setup/fresh-page.ts";
import { desk, tablet } from "../browser-setup/launch.ts";
import { openSheet, settle } from "./open-sheet.ts";
import { flatten, readPdfWords } from "./pdf-words.ts";

/** Counts what a person does: one field filled or one tap is one entry. */
class Entries {
  count = 0;
  readonly page: Page;
  constructor(page: Page) {
    this.page = page;
  }
  async tap(thing: Locator): Promise<void> {
    await thing.click();
    this.count += 1;
    await settle(this.page);
  }
  async fill(label: string, value: string): Promise<void> {
    await this.page.getByLabel(label, { exact: true }).fill(value);
    this.count += 1;
  }
}

const MOST_ENTRIES = 20;

describe("from a silhouette to the printed sheet of one torn bush", () => {
  it.each([desk, tablet])("takes at most 20 entries at $width x $height", async (screen) => {
    const page = await openPage(screen);
    await openSheet(page, "/");
    const entries = new Entries(page);
    await entries.tap(page.getByRole("link", { name: "Begin a car line" }));
    await entries.tap(page.getByRole("group", { name: "Front axle" }).getByLabel("double wishbone"));
    await entries.tap(page.getByRole("group", { name: "Rear axle" }).getByLabel("five-link"));
    await entries.fill("Name", "Wagtail van");
    await entries.fill("Wheelbase", "2850");
    await entries.fill("Front track", "1560");
    await entries.fill("Rear track", "1570");
    await entries.fill("Tyre size", "215/55 R17");
    await entries.fill("Kerb mass", "1620");
    await entries.fill("Weight on front", "54");
    await entries.tap(page.getByRole("button", { name: "Make this car line" }));
    await entries.tap(page.getByRole("button", { name: /^Rear left,/ }));
    await entries.tap(page.getByRole("button", { name: /^Rear left, trailing link, front bush/ }));
    await entries.tap(page.getByRole("button", { name: "Torn: repair first" }));
    const download = page.waitForEvent("download");
    await entries.tap(page.getByRole("button", { name: "Print the sheet" }));
    const sheet = await download;

    expect(entries.count).toBeLessThanOrEqual(MOST_ENTRIES);
    expect(sheet.suggestedFilename()).toMatch(/^wagtail-van.*\.pdf$/);
    const pdf = readFileSync(await sheet.path());
    expect(pdf.subarray(0, 5).toString()).toBe("%PDF-");
    const said = await page
      .locator(".margin-section", { hasText: "What it does" })
      .locator(".margin-text")
      .textContent();
    expect(said).toMatch(/torn bush lets the rear left wheel turn (in|out) \d\.\d+° further/);
    expect(flatten(readPdfWords(pdf))).toContain(flatten(said ?? ""));
  });
});
