import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import type { FaultQuestion } from "#casework";
import { formatComplianceQuestion, parseFamily } from "#contract";
import { desk, launchBrowser, openSession } from "../browser-setup/launch.ts";
import { openSheet, settle } from "./open-sheet.ts";
import { flatten, readPdfWords } from "./pdf-words.ts";
import { FAMILY, TORN_BUSH } from "./sheets.ts";

const ID = "chain-saloon";
const demo = join(fileURLToPath(new URL("../../", import.meta.url)), `src/demo/families/${FAMILY}.json`);

/** The family's file with the rates of the bush in question times a factor. */
const sheetWith = (factor: number) => {
  const sheet = JSON.parse(readFileSync(demo, "utf8"));
  const joint = sheet.rear.links.find((link: { readonly name: string }) => link.name === "trailing-link").inner_joint;
  joint.radial_n_per_mm *= factor;
  joint.axial_n_per_mm *= factor;
  return { ...sheet, id: ID, name: "Chain saloon" };
};

const save = async (sheet: unknown, condition: Record<string, string>): Promise<string> => {
  const response = await fetch(`${inject("address")}/api/families/${ID}`, {
    method: "PUT",
    headers: { "content-type": "application/json", ...condition },
    body: JSON.stringify(sheet),
  });
  expect(response.ok).toBe(true);
  return response.headers.get("etag") ?? "";
};

const QUESTION: FaultQuestion = {
  corner: "rear-left",
  position: TORN_BUSH,
  fault: { kind: "torn", grade: 3 },
  condition: { contactRise: 0, rack: 0, braking: 2000, lateral: 0, drive: 0 },
};

const askToe = async (sheet: unknown, factor: number | null): Promise<number> => {
  const parsed = parseFamily(sheet);
  if ("findings" in parsed) throw new Error(JSON.stringify(parsed.findings));
  const response = await fetch(`${inject("address")}/api/calc/linkage.compliance`, {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: JSON.stringify(formatComplianceQuestion(parsed.family, QUESTION, factor)),
  });
  const { output } = (await response.json()) as {
    readonly output: { readonly states: readonly { readonly toe_deg: number }[] };
  };
  return output.states[0]?.toe_deg ?? Number.NaN;
};

/** What the door says the torn bush does, with the middle (geometric mean) of its torn share, as it is shown. */
const doorSays = async (sheet: ReturnType<typeof sheetWith>): Promise<string> => {
  const [low, high] = sheet.rear.defaults.torn_share.repair_first;
  const difference = (await askToe(sheet, Math.sqrt(low * high))) - (await askToe(sheet, null));
  return `${Math.abs(difference).toFixed(2)}°`;
};

const readSheet = async (page: Page) => {
  await openSheet(page, `/families/${ID}/geometry?marks=${TORN_BUSH}:torn-3&at=${TORN_BUSH}`);
  await settle(page);
  const download = page.waitForEvent("download");
  await page.getByRole("button", { name: "Print the sheet" }).click();
  const pdf = readFileSync(await (await download).path());
  return {
    figure: await page.locator(".figure-huge").textContent(),
    views: await page.locator(".geometry-views svg").first().innerHTML(),
    curves: await page.locator(".geometry-curves svg").first().innerHTML(),
    printed: flatten(readPdfWords(pdf)),
  };
};

describe("one rubber rate changed in a family's file", () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await launchBrowser();
  });
  afterAll(() => browser.close());

  it("changes figure, sentence, curve and print, each equal to the door's answer to the digits shown", async () => {
    const page = await (await openSession(browser, desk)).newPage();
    const before = sheetWith(1);
    const version = await save(before, { "if-none-match": "*" });
    const first = await readSheet(page);
    const after = sheetWith(2);
    await save(after, { "if-match": version });
    const second = await readSheet(page);

    for (const [sheet, shown] of [
      [before, first],
      [after, second],
    ] as const) {
      const said = await doorSays(sheet);
      expect(shown.figure).toBe(said);
      expect(shown.views).toContain(`${said} further`);
      expect(shown.curves).toContain(said);
      expect(shown.printed).toContain(said);
      expect(shown.printed).toContain(`${said} further`);
    }
    expect(second.figure).not.toBe(first.figure);
    expect(second.curves).not.toBe(first.curves);
  });
});
