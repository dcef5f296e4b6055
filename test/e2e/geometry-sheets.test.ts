import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { findByAxe } from "./axe.ts";
import { describeSheets } from "./describe-sheets.ts";
import { enterHardness } from "./enter-hardness.ts";
import { openAtDesk, settle } from "./open-sheet.ts";
import { GEOMETRY_SHEETS } from "./sheets.ts";

describeSheets("of the geometry", GEOMETRY_SHEETS);

/** Draws the place torn beside sound, firmer by hardness and lowered; the address keeps it, and paper and file hold all. */
const drawFourStates = async (page: Page): Promise<void> => {
  await page.getByLabel("Also firmer").selectOption("firmer-2");
  await page.getByLabel("Lowered").selectOption("30");
  await page.getByLabel("Second").selectOption("wheelbase");
  await enterHardness(page, "55", "65");
  await page.waitForURL(/also=firmer-shore-55-65/);
  const firm = "firmer, 55 to 65 Shore A: trailing link, front bush";
  await page.getByRole("table", { name: firm }).waitFor();
  await settle(page);
  for (const name of ["torn: trailing link, front bush", "Sound", "lowered 30 mm"])
    expect(await page.getByRole("table", { name, exact: true }).count(), name).toBe(1);
  const curves = page.locator(".geometry-curves svg").first();
  const labels = (await curves.locator("text").allTextContents()).map((text) => text.trim());
  for (const label of ["sound", "torn", "firmer", "lowered 30 mm"]) expect(labels, label).toContain(label);
  expect(await curves.locator("path[opacity], path[fill-opacity]").count(), "bands").toBeGreaterThanOrEqual(4);
  expect(await page.getByLabel("Also loose").isDisabled()).toBe(true);
  const [file] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("link", { name: "Lines as CSV" }).last().click(),
  ]);
  const rows = readFileSync(await file.path(), "utf8")
    .trimEnd()
    .split("\r\n")
    .slice(1);
  const toes = rows.filter((row) => row.includes(",toe,"));
  for (const line of [",sound,", `,"torn: `, `"${firm}"`, ",lowered 30 mm,"])
    expect(toes.filter((row) => row.includes(line)).length, line).toBeGreaterThan(10);
  const [paper] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Print all lines" }).click(),
  ]);
  expect(paper.suggestedFilename()).toBe("ouzel-saloon-rear-left-travel.pdf");
  await page.reload();
  await settle(page);
  expect(await page.getByLabel("New part").inputValue()).toBe("65");
  expect(await findByAxe(page)).toEqual([]);
};

describe("what opens on the geometry", () => {
  it("leaves axe nothing in the list of keys and in an opened figure", async () => {
    const page = await openAtDesk(GEOMETRY_SHEETS.find(({ name }) => name === "geometry")?.path ?? "/");
    await page.getByText("All inputs").click();
    expect.soft(await findByAxe(page)).toEqual([]);
    await page.keyboard.press("?");
    await page.getByRole("dialog").waitFor();
    expect(await findByAxe(page)).toEqual([]);
    await page.keyboard.press("Escape");
    await drawFourStates(page);
  });
});
