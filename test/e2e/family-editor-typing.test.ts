import type { Page } from "playwright-core";
import { beforeAll, describe, expect, it } from "vitest";
import { saveSheet, sheetWith } from "./chain-family.ts";
import { openAtDesk, openSheet, settle } from "./open-sheet.ts";

const ID = "typed-saloon";
const POINTS = `/families/${ID}/edit?part=rear&section=points`;
const FILE = `/families/${ID}/edit?part=file`;

const focused = (page: Page): Promise<string> =>
  page.evaluate(() => document.activeElement?.getAttribute("aria-label") ?? document.activeElement?.textContent ?? "");

describe("typing the data of a car line", () => {
  beforeAll(async () => {
    await saveSheet(sheetWith(ID, "Typed saloon", 1), { "if-none-match": "*" });
  });

  it("goes through the coordinates of all points before how well one is known", async () => {
    const page = await openAtDesk(POINTS);
    await page.getByLabel("Trailing link, inner end, x in mm").focus();
    const passed: string[] = [];
    for (let i = 0; i < 8; i++) {
      await page.keyboard.press("Tab");
      passed.push(await focused(page));
    }
    expect(passed.filter((name) => name.includes("standard deviation"))).toEqual([]);
    expect(passed.filter((name) => name.endsWith("in mm"))).toEqual([
      "Trailing link, inner end, y in mm",
      "Trailing link, inner end, z in mm",
      "Trailing link, outer end, x in mm",
      "Trailing link, outer end, y in mm",
      "Trailing link, outer end, z in mm",
      expect.stringContaining("x in mm"),
    ]);
    await page.getByLabel("Trailing link, inner end, z in mm").focus();
    await page.keyboard.press("Enter");
    expect(await focused(page)).toBe("Trailing link, outer end, x in mm");
    await page.keyboard.press("Shift+Enter");
    await page.keyboard.press("Control+ArrowDown");
    expect(await focused(page)).toBe("Trailing link, outer end, z in mm");
    await page.keyboard.press("Control+ArrowUp");
    expect(await focused(page)).toBe("Trailing link, inner end, z in mm");
    await page.getByRole("button", { name: "Trailing link inner end" }).click();
    await page.getByLabel("Trailing link, inner end, standard deviation along x in mm").waitFor();
  });

  it("says beside a point that it lies a metre too high, and which figure would do", async () => {
    const page = await openAtDesk(POINTS);
    const field = page.getByLabel("Trailing link, inner end, z in mm");
    const before = await field.inputValue();
    await field.fill(String(Number(before) + 1000));
    await page
      .locator(".points .finding-note")
      .getByText(`z ${before} in place of ${Number(before) + 1000} would do`)
      .waitFor();
    await page.getByRole("button", { name: "Undo" }).click();
    await page.locator(".points .finding-note").waitFor({ state: "detached" });
  });

  it("keeps a text of the whole file that is no file yet, through other sections and reload, until it is dropped", async () => {
    const page = await openAtDesk(FILE);
    const file = page.getByLabel("The file of this car line");
    const whole = await file.inputValue();
    const half = whole.slice(0, 400);
    await file.fill(half);
    await page.getByRole("link", { name: /^Rear axle/ }).click();
    await settle(page);
    await page.getByRole("link", { name: "Whole file" }).click();
    expect(await file.inputValue()).toBe(half);
    await openSheet(page, FILE);
    expect(await file.inputValue()).toBe(half);
    await page.getByRole("button", { name: "Drop this text and show the sheet" }).click();
    expect(await file.inputValue()).toBe(whole);
    await openSheet(page, FILE);
    expect(await file.inputValue()).toBe(whole);
  });
});

describe("beginning a car line", () => {
  it("draws the car and says what is wrong after a reload with a wrong entry; a unit may stand behind a figure", async () => {
    const page = await openAtDesk("/families/begin");
    await page.getByLabel("Wheelbase", { exact: true }).fill("2.71 m");
    await page.getByLabel("Kerb mass", { exact: true }).fill("heavy");
    await page.reload();
    await settle(page);
    expect(await page.getByLabel("Kerb mass", { exact: true }).inputValue()).toBe("heavy");
    expect(await page.locator(".begin-preview svg").count()).toBeGreaterThan(0);
    expect(await page.locator(".begin-preview").textContent()).toContain("wheelbase 2710");
    expect(await page.locator(".margin").textContent()).toContain("One entry has to be put right first");
    await page.getByLabel("Kerb mass", { exact: true }).fill("1 510 kg");
    await settle(page);
    expect(await page.locator(".margin").textContent()).not.toContain("put right first");
  });
});
