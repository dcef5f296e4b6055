import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { openPage } from "../browser-setup/fresh-page.ts";
import { desk, tablet } from "../browser-setup/launch.ts";
import { walkToFindings } from "./cases-first-half.ts";
import { allStored, Entries } from "./entries.ts";
import { listenForComplaints } from "./open-sheet.ts";
import { flatten, readPdfWords } from "./pdf-words.ts";

/** From the owner's words to the printed owner's page. */
const MOST_ENTRIES = 40;

describe("an unknown car from its owner's words to the printed owner's page", () => {
  it.each([desk, tablet])("takes at most 40 entries at $width x $height", async (screen) => {
    const page = await openPage(screen);
    const complaints = listenForComplaints(page);
    const entries = new Entries(page);
    await walkToFindings(entries);
    await page.locator(".found-row").first().waitFor();
    const found = (await page.locator(".found-row .found-name").first().textContent()) ?? "";
    expect(found).toContain("Rear left, trailing link");
    await entries.tap(page.getByRole("button", { name: "Done, on to Plan" }));
    await page.waitForURL(/\/plan$/);
    await page.locator(".plan-row").first().waitFor();
    await entries.tap(page.getByRole("button", { name: /^Agree to / }).first());
    await allStored(page);
    const remedy = (await page.locator(".plan-row .found-name").first().textContent()) ?? "";
    const price = (await page.locator(".plan-row .plan-price-opens").first().textContent()) ?? "";
    const download = page.waitForEvent("download");
    await entries.tap(page.getByRole("button", { name: "Print the owner's page" }));
    const pdf = readFileSync(await (await download).path());
    expect(entries.count).toBeLessThanOrEqual(MOST_ENTRIES);

    expect(pdf.subarray(0, 5).toString()).toBe("%PDF-");
    const printed = flatten(readPdfWords(pdf));
    expect(printed).toContain("128 440 km");
    for (const words of [remedy, price]) expect(printed).toContain(flatten(words).replaceAll("\u00a0", " "));
    expect(complaints).toEqual([]);
  });
});
