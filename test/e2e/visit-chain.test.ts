import type { Page } from "playwright-core";
import { describe, expect, inject, it } from "vitest";
import { openPage } from "../browser-setup/fresh-page.ts";
import { desk } from "../browser-setup/launch.ts";
import { doorSays, saveSheet, sheetWith } from "./chain-family.ts";
import { openSheet } from "./open-sheet.ts";
import { flatten, readPdfWords } from "./pdf-words.ts";
import { putCarAndVisit, putLooks } from "./recorded-visit.ts";
import { TORN_BUSH } from "./sheets.ts";

const ID = "chain-visit";
const FAMILY_ID = "chain-of-visit";

/** What every page and the paper say of the torn bush. */
const readChain = async (page: Page) => {
  await openSheet(page, `/families/${FAMILY_ID}/geometry?marks=${TORN_BUSH}:torn-3&at=${TORN_BUSH}`);
  const curves = await page.locator(".geometry-curves svg").first().innerHTML();
  await openSheet(page, `/cases/${ID}/findings?at=${TORN_BUSH}`);
  const sentence = (await page.locator(".effect-sentence").textContent()) ?? "";
  const figure = await page.locator(".margin .figure-huge").textContent();
  await openSheet(page, `/cases/${ID}/plan`);
  const row = page.locator(".plan-row", { has: page.locator(".plan-does") });
  const line = (await row.locator(".plan-does").textContent()) ?? "";
  await row.locator(".plan-pick").click();
  const inMargin = (await page.locator(".plan-effect").textContent()) ?? "";
  const paper = await fetch(`${inject("address")}/api/visits/${ID}/owners-page`);
  expect(paper.headers.get("content-type")).toBe("application/pdf");
  const printed = flatten(readPdfWords(Buffer.from(await paper.arrayBuffer())));
  return { curves, sentence, figure, line, inMargin, printed };
};

describe("one rubber rate changed in the file of a car's family", () => {
  it("changes the curve, the sentence in Findings, the line in Plan and the owner's page, each as the door answers", async () => {
    const page = await openPage(desk);
    const before = sheetWith(FAMILY_ID, "Chain of a visit", 1);
    const version = await saveSheet(before, { "if-none-match": "*" });
    await putCarAndVisit(ID, FAMILY_ID);
    await putLooks(ID, ID, 7, [{ place: TORN_BUSH, content: { kind: "signs", signs: ["web-torn"] } }]);
    const first = await readChain(page);
    const after = sheetWith(FAMILY_ID, "Chain of a visit", 2);
    await saveSheet(after, { "if-match": version });
    const second = await readChain(page);
    for (const [sheet, shown] of [
      [before, first],
      [after, second],
    ] as const) {
      const said = await doorSays(sheet);
      expect(shown.curves).toContain(said);
      expect(shown.figure).toBe(said);
      expect(shown.sentence).toContain(`${said} further`);
      expect(shown.line).toContain(`${said} further`);
      expect(shown.inMargin).toBe(shown.sentence);
      expect(shown.printed).toContain(flatten(shown.sentence));
    }
    expect(second.figure).not.toBe(first.figure);
    expect(second.curves).not.toBe(first.curves);
    expect(second.line).not.toBe(first.line);
  });
});
