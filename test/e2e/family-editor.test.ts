import { join } from "node:path";
import type { Page } from "playwright-core";
import { describe, expect, inject, it } from "vitest";
import { formatTravelQuestion, parseFamily } from "#contract";
import { openPage } from "../browser-setup/fresh-page.ts";
import { desk, tablet } from "../browser-setup/launch.ts";
import { findByAxe } from "./axe.ts";
import { doorSays, saveSheet, sheetWith } from "./chain-family.ts";
import { PICTURES } from "./look-at-sheet.ts";
import { listenForComplaints, openSheet } from "./open-sheet.ts";
import { FAMILY, TORN_BUSH } from "./sheets.ts";
import { overlapping, pressable, small } from "./thumb.ts";

const POINT = "rear.links[4].inner_mm";
const FIELD = "Toe link, inner end, z in mm";
const RAISED = 283.9;

type Sheet = ReturnType<typeof sheetWith>;

const load = async (
  id: string,
): Promise<{ readonly text: string; readonly sheet: Sheet; readonly version: string }> => {
  const response = await fetch(`${inject("address")}/api/families/${id}`);
  const text = await response.text();
  return { text, sheet: JSON.parse(text), version: response.headers.get("etag") ?? "" };
};

/** Change of toe of the left rear wheel from ride height to 50 mm up, as linkage.travel answers, degrees. */
const doorToeChange = async (sheet: unknown): Promise<number> => {
  const parsed = parseFamily(sheet);
  if ("findings" in parsed) throw new Error(JSON.stringify(parsed.findings));
  const response = await fetch(`${inject("address")}/api/calc/linkage.travel`, {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: JSON.stringify(formatTravelQuestion(parsed.family, "rear-left", [0, 50])),
  });
  const { output } = (await response.json()) as {
    readonly output: { readonly positions: readonly { readonly toe_deg: number }[] };
  };
  const [rest, up] = output.positions;
  return (up?.toe_deg ?? Number.NaN) - (rest?.toe_deg ?? Number.NaN);
};

const asShown = (degrees: number): string => `${degrees < 0 ? "−" : "+"}${Math.abs(degrees).toFixed(2)}°`;

/** The figure of a change in the margin, once it stands still. */
const toeUp = (page: Page) => page.locator(".change-line", { hasText: "Toe, 50 mm up" }).locator(".change-figure");

const geometryFigure = async (page: Page, id: string): Promise<string | null> => {
  await openSheet(page, `/families/${id}/geometry?marks=${TORN_BUSH}:torn-3&at=${TORN_BUSH}`);
  return page.locator(".figure-huge").textContent();
};

const save = async (page: Page): Promise<void> => {
  await page.getByRole("button", { name: "Save", exact: true }).click();
  await page.getByText("Saved.", { exact: true }).waitFor();
};

describe("the data of a car line", () => {
  const openEditor = async (id: string, search: string): Promise<Page> => {
    const page = await openPage(desk);
    await openSheet(page, `/families/${id}/edit?${search}`);
    return page;
  };

  it("of an invented one is copied first; one hard point moves the drawing, what it does, and the pages that use it", async () => {
    const page = await openPage(desk);
    const complaints = listenForComplaints(page);
    await openSheet(page, `/families/${FAMILY}`);
    await page.getByRole("link", { name: "Edit the data" }).click();
    await page.getByLabel("What the workshop calls it").fill("Copied saloon");
    await page.getByRole("button", { name: "Make this copy" }).click();
    await page.waitForURL(/\/families\/copied-saloon\/edit/);
    const before = await load("copied-saloon");
    const geometryBefore = await geometryFigure(page, "copied-saloon");

    await openSheet(page, `/families/copied-saloon/edit?part=rear&at=${POINT}`);
    await expect.poll(() => toeUp(page).textContent()).toBe(asShown(await doorToeChange(before.sheet)));
    const drawn = await page.locator(".editor-drawing svg").innerHTML();
    await page.getByLabel(FIELD).fill(String(RAISED));
    await expect.poll(() => page.locator(".editor-drawing svg").innerHTML()).not.toBe(drawn);
    const entered = structuredClone(before.sheet);
    entered.rear.links[4].inner_mm[2] = RAISED;
    const change = await doorToeChange(entered);
    await expect.poll(() => toeUp(page).textContent()).toBe(asShown(change));
    // A link ahead of the hub that falls outward more steeply pushes its outer end out as the wheel rises: toe-out.
    expect(change).toBeLessThan(await doorToeChange(before.sheet));

    await save(page);
    expect((await load("copied-saloon")).sheet).toEqual(entered);
    const geometryAfter = await geometryFigure(page, "copied-saloon");
    expect(geometryBefore).toBe(await doorSays(before.sheet));
    expect(geometryAfter).toBe(await doorSays(entered));
    expect(geometryAfter).not.toBe(geometryBefore);
    expect(complaints).toEqual([]);
  });

  it("says what is wrong beside its field, keeps the drawing that closed, refuses to save and loses nothing", async () => {
    const sheet = sheetWith("wrong-saloon", "Wrong saloon", 1);
    await saveSheet(sheet, { "if-none-match": "*" });
    const { text } = await load("wrong-saloon");
    const page = await openEditor("wrong-saloon", `part=rear&at=${POINT}`);
    const drawn = await page.locator(".editor-drawing svg").innerHTML();
    await page.getByLabel(FIELD).fill("27x");
    await page.locator(".points .finding-note").getByText("27x").waitFor();
    await page.getByText("As it was when it last closed").waitFor();
    expect(await page.locator(".editor-drawing svg").innerHTML()).toBe(drawn);
    await page.getByRole("button", { name: "Save", exact: true }).click();
    await page.getByText("Nothing was saved: one thing to put right first.").waitFor();
    expect((await load("wrong-saloon")).text).toBe(text);
    expect.soft(await findByAxe(page)).toEqual([]);

    await openSheet(page, `/families/wrong-saloon/edit?part=rear&at=${POINT}`);
    expect(await page.getByLabel(FIELD).inputValue()).toBe("27x");
    await page.getByRole("button", { name: "Undo" }).click();
    expect(await page.getByLabel(FIELD).inputValue()).toBe(String(sheet.rear.links[4].inner_mm[2]));
    await page.getByText("Nothing changed.").waitFor();
  });

  it("leads from a finding to its field, whatever section that stands in", async () => {
    const sheet = sheetWith("led-saloon", "Led saloon", 1);
    await saveSheet(sheet, { "if-none-match": "*" });
    const page = await openEditor("led-saloon", "part=car");
    await page.getByLabel("Kerb mass", { exact: true }).fill("");
    await page.getByRole("link", { name: /^Front axle/ }).click();
    await page.getByRole("button", { name: "Kerb mass" }).click();
    await expect.poll(() => page.evaluate(() => document.activeElement?.getAttribute("id") !== null)).toBe(true);
    expect(new URL(page.url()).searchParams.get("part")).toBe("car");
    await page.getByLabel("Kerb mass", { exact: true }).fill("1500");
    await page.getByRole("link", { name: "Whole file" }).click();
    const file = page.getByLabel("The file of this car line");
    await file.fill((await file.inputValue()).replace('"name": "Led saloon"', '"name": "Led, by its file"'));
    await save(page);
    expect((await load("led-saloon")).sheet).toEqual({ ...sheet, kerb_mass_kg: 1500, name: "Led, by its file" });
  });

  it("says which figures an entry makes printable, and leads from one to the coordinate that does most to it", async () => {
    const sheet = sheetWith("loose-saloon", "Loose saloon", 1);
    sheet.rear.defaults.sd_mm = [20, 20, 12];
    await saveSheet(sheet, { "if-none-match": "*" });
    const page = await openEditor("loose-saloon", "part=rear&section=axle");
    const margin = page.locator(".margin");
    await margin.getByText("What each figure hangs on").waitFor();
    expect(await margin.textContent()).toMatch(/[0-6] of 7 figures printable\./);
    const figure = margin.locator("details", { hasText: "Toe from ride height, 50 mm of bump" });
    await figure.locator("summary").click();
    expect(await figure.textContent()).toContain("not printable");
    const most = figure.getByRole("button").first();
    const name = ((await most.textContent()) ?? "").split(", ").slice(0, 2).join(", ");
    await page.screenshot({ path: join(PICTURES, "editor-figures-1440x900-light.png") });
    await most.click();
    await page.getByRole("heading", { name }).waitFor();
    expect(new URL(page.url()).searchParams.get("section")).toBe("points");
    // The next key goes into that very coordinate.
    const axis = { along: "x", across: "y", height: "z" }[((await most.textContent()) ?? "").split(", ")[2] ?? ""];
    const field = page.getByLabel(`${name}, ${axis} in mm`, { exact: true });
    await expect.poll(() => field.evaluate((input) => input === document.activeElement)).toBe(true);
    await field.fill("7.4 in");
    await page.getByRole("button", { name: new RegExp(`^${name}, known by`) }).click();
    await page.getByLabel(`${name}, known by`, { exact: true }).selectOption("level-plane");
    const deviation = page.getByLabel(`${name}, standard deviation along z in mm`, { exact: true });
    await expect.poll(() => deviation.getAttribute("placeholder")).toBe("1");
    expect(await field.inputValue()).toBe("7.4 in");
  });

  it("two people edit at once: the second saves nothing, sees both values and chooses", async () => {
    const sheet = sheetWith("shared-saloon", "Shared saloon", 1);
    const version = await saveSheet(sheet, { "if-none-match": "*" });
    const page = await openEditor("shared-saloon", `part=rear&at=${POINT}`);
    const theirs = structuredClone(sheet);
    theirs.rear.links[4].inner_mm[2] = 270;
    await saveSheet({ ...theirs, kerb_mass_kg: 1600 }, { "if-match": version });

    await page.getByLabel(FIELD).fill("275");
    await page.getByRole("button", { name: "Save", exact: true }).click();
    const both = page.getByRole("region", { name: "Two versions of this car line" });
    await both.waitFor();
    expect((await load("shared-saloon")).sheet.rear.links[4].inner_mm[2]).toBe(270);
    expect(await both.getByRole("row", { name: /Toe link/ }).textContent()).toMatch(/275[\s\S]*270/);
    expect(await both.getByRole("radio", { name: /theirs: 1600/ }).isChecked()).toBe(true);
    expect.soft(await findByAxe(page)).toEqual([]);
    await both.getByRole("button", { name: "Go on with what is chosen" }).click();
    await save(page);
    const kept = (await load("shared-saloon")).sheet;
    expect([kept.rear.links[4].inner_mm[2], kept.kerb_mass_kg]).toEqual([275, 1600]);
  });

  it("a tap on a drawn point selects its row", async () => {
    const page = await openEditor("shared-saloon", "part=rear");
    const box = await page.locator(".editor-drawing .scene").boundingBox();
    const circle = page.locator(".editor-drawing svg circle").last();
    const at = await circle.boundingBox();
    if (box === null || at === null) throw new Error("nothing is drawn");
    await page.mouse.click(at.x + at.width / 2, at.y + at.height / 2);
    await page.locator('.point-row[data-selected="true"]').waitFor();
    expect(new URL(page.url()).searchParams.get("at")).toMatch(/^rear\./);
  });

  it("on an upright tablet everything to press is as large as a thumb and nothing overlaps", async () => {
    const page = await openPage(tablet);
    for (const search of [`part=rear&at=${POINT}`, "part=work&section=operations", "part=car&section=identity"]) {
      await openSheet(page, `/families/shared-saloon/edit?${search}`);
      for (const part of [".sections", ".editor-fields", ".margin"]) {
        const boxes = await pressable(page, part);
        expect.soft(overlapping(boxes), `${part} ${search}`).toEqual([]);
        expect.soft(small(boxes), `${part} ${search}`).toEqual([]);
      }
    }
  });
});
