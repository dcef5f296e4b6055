import { readFileSync } from "node:fs";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import {
  computeTravelSheet,
  formatNumber,
  formatTravelCsv,
  type TravelSheet,
  type TravelSheetQuestion,
} from "#casework";
import { parseFamily } from "#contract";
import { demoFamilySheets } from "#demo";
import { launchBrowser } from "../browser-setup/launch.ts";
import { openAtDesk, settle } from "./open-sheet.ts";

const readFamily = (id: string) => {
  const parsed = parseFamily(structuredClone(demoFamilySheets[id]));
  if ("findings" in parsed) throw new Error(JSON.stringify(parsed.findings));
  return parsed.family;
};

const question: TravelSheetQuestion = {
  family: readFamily("ouzel-saloon"),
  corner: "front-left",
  condition: { contactRise: 0, rack: 0, braking: 0, lateral: 0, drive: 0 },
  subjects: [{ kind: "sound" }, { kind: "beside", family: readFamily("dunlin-hatch") }],
  figures: ["toe", "caster"],
};

const computed = (): TravelSheet => {
  const answer = computeTravelSheet(question);
  if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
  return answer.sheet;
};

describe("over travel", () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await launchBrowser();
  });
  afterAll(() => browser.close());

  it("compares two car lines, and page, file and calculation say the same", async () => {
    const page = await openAtDesk(browser, "/families/ouzel-saloon/travel");
    await page.getByLabel("Beside").selectOption("dunlin-hatch");
    await page.getByLabel("Second").selectOption("caster");
    await page.getByRole("heading", { name: "Which moves more" }).waitFor();
    await settle(page);
    const sheet = computed();
    for (const sentence of sheet.sentences.slice(sheet.rows.length))
      expect(await page.getByText(sentence, { exact: true }).count(), sentence).toBe(1);
    const table = page.getByRole("table", { name: "Ouzel saloon" });
    for (const key of ["toe", "camber"] as const) {
      const row = table.getByRole("row").filter({ has: page.getByRole("rowheader", { name: key }) });
      for (const { value, sure } of sheet.rows[0]?.[key] ?? [])
        expect(await row.textContent()).toContain(sure ? `${formatNumber(Math.abs(value), 2)}°` : "sign not sure");
    }
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("link", { name: "Lines as CSV" }).click(),
    ]);
    expect(download.suggestedFilename()).toBe("ouzel-saloon-front-left.csv");
    expect(readFileSync(await download.path(), "utf8")).toBe(formatTravelCsv(sheet, question));
    await page.reload();
    await settle(page);
    expect(await page.getByLabel("Beside").inputValue()).toBe("dunlin-hatch");
  });

  it("turns the corner and moves its wheel by keyboard, and says what the address names in vain", async () => {
    const page = await openAtDesk(browser, "/families/ouzel-saloon/travel?corner=rear-left&beside=nobody");
    await page.getByText("nobody is not on this corner or not on the list").waitFor();
    const drawing = page.getByRole("img", { name: "The corner in space" });
    const before = await drawing.innerHTML();
    await page.getByLabel("Walk round it").focus();
    await page.keyboard.press("ArrowRight");
    await page.waitForURL(/turn_deg=40/);
    const turned = await drawing.innerHTML();
    expect(turned).not.toBe(before);
    await page.getByLabel("Travel", { exact: true }).focus();
    await page.keyboard.press("End");
    await page.waitForURL(/rise_mm=88/);
    await settle(page);
    expect(await drawing.innerHTML()).not.toBe(turned);
    await page.getByLabel("Torn").selectOption("rear-left/trailing-link/inner-bush");
    await page.getByLabel("Twice as firm").selectOption("rear-left/trailing-link/inner-bush");
    await page.getByLabel("Lowered").selectOption("20");
    await page.getByLabel("Beside").selectOption("");
    await expect.poll(() => page.getByLabel("Beside").isDisabled()).toBe(true);
  });
});
