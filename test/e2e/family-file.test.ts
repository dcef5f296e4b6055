import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Page } from "playwright-core";
import { describe, expect, inject, it } from "vitest";
import { openPage } from "../browser-setup/fresh-page.ts";
import { desk } from "../browser-setup/launch.ts";
import { findByAxe } from "./axe.ts";
import { listenForComplaints, openSheet, settle } from "./open-sheet.ts";
import { FAMILY } from "./sheets.ts";

const demo = join(fileURLToPath(new URL("../../", import.meta.url)), `src/demo/families/${FAMILY}.json`);
const read = () => JSON.parse(readFileSync(demo, "utf8"));

const choose = async (page: Page, name: string, text: string): Promise<void> => {
  await page
    .getByLabel("Read a family file in")
    .setInputFiles({ name, mimeType: "application/json", buffer: Buffer.from(text) });
  await settle(page);
};

describe("a family's file", () => {
  const openFamilies = async (): Promise<Page> => {
    const page = await openPage(desk);
    await openSheet(page, "/families");
    return page;
  };

  it("is refused with everything wrong in it at once, and nothing is kept", async () => {
    const page = await openFamilies();
    const sheet = { ...read(), id: "half-read", wheelbase_mm: -1, kerb_mas_kg: 1500, kerb_mass_kg: "heavy" };
    await choose(page, "half-read.json", JSON.stringify(sheet));
    await page.locator(".findings").waitFor();
    const rows = await page.locator(".findings tbody tr").allInnerTexts();
    expect(rows.some((row) => row.includes("wheelbase_mm") && row.includes("-1"))).toBe(true);
    expect(rows.some((row) => row.includes("kerb_mas_kg") && row.includes("kerb_mass_kg"))).toBe(true);
    expect(rows.some((row) => row.startsWith("kerb_mass_kg") && row.includes("heavy"))).toBe(true);
    expect(await (await fetch(`${inject("address")}/api/families/half-read`)).status).toBe(404);
  });

  it("that is no JSON is said so", async () => {
    const page = await openFamilies();
    await choose(page, "torn.json", '{"format": ');
    await page.locator(".findings").waitFor();
    expect(await page.locator(".findings tbody tr").count()).toBe(1);
    expect(await page.getByText("This looks like a layout").count()).toBe(0);
  });

  it("that is a layout of bodies leads to the page that reads those", async () => {
    const page = await openFamilies();
    const layout = join(
      fileURLToPath(new URL("../../", import.meta.url)),
      "docs/examples/layouts/rear-integral-link.json",
    );
    await choose(page, "own.json", readFileSync(layout, "utf8"));
    await page.getByRole("link", { name: "Read it in on the page of layouts" }).click();
    await page.waitForURL(/\/layouts/);
  });

  it("with an axle of several bodies is read in, seen from below, and moved torn", async () => {
    const page = await openFamilies();
    const complaints = listenForComplaints(page);
    const tourer = join(
      fileURLToPath(new URL("../../", import.meta.url)),
      "docs/examples/families/whinchat-tourer.json",
    );
    const sheet = { ...JSON.parse(readFileSync(tourer, "utf8")), id: "whinchat-read-in" };
    await choose(page, "whinchat-tourer.json", JSON.stringify(sheet));
    await page.getByText("Kept:").waitFor();
    const torn = "rear-left/toe-link/inner-bush";
    for (const path of ["underside", `geometry?at=${torn}&as=torn-3`]) {
      await openSheet(page, `/families/whinchat-read-in/${path}`);
      expect(await findByAxe(page), path).toEqual([]);
    }
    expect(await page.locator(".findings").count()).toBe(0);
    expect(await page.getByRole("main").textContent()).toMatch(/toe link/i);
    expect(complaints).toEqual([]);
  });

  it("is kept under its own id, asked about before it replaces another, and comes out as it went in", async () => {
    const page = await openFamilies();
    const text = `${JSON.stringify({ ...read(), id: "read-in", name: "Read in" }, null, 1)}\n`;
    await choose(page, "read-in.json", text);
    await page.getByText("Kept:").waitFor();
    await choose(page, "read-in.json", text.replace('"name": "Read in"', '"name": "Read in anew"'));
    await page.getByRole("button", { name: "Put this file in its place" }).click();
    await page.getByText("Kept:").waitFor();
    await page.getByRole("link", { name: "Read in anew", exact: true }).first().click();
    await settle(page);
    const download = page.waitForEvent("download");
    await page.getByRole("link", { name: "Family file" }).click();
    const file = await download;
    expect(file.suggestedFilename()).toBe("read-in.json");
    expect(readFileSync(await file.path(), "utf8")).toBe(text.replace('"name": "Read in"', '"name": "Read in anew"'));
  });

  it("cannot take the place of an invented one", async () => {
    const page = await openFamilies();
    await choose(page, `${FAMILY}.json`, readFileSync(demo, "utf8"));
    expect(await page.locator(".findings tbody tr").textContent()).toContain("under another id");
  });
});
