import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { openAtDesk, openSheet, settle } from "./open-sheet.ts";
import { FAMILY, TORN_BUSH } from "./sheets.ts";

const UNDERSIDE = `/families/${FAMILY}/underside`;
const gradeOf = async (page: Page): Promise<string> =>
  ((await page.locator(".margin-grade").first().textContent()) ?? "").trim();

describe("marks", () => {
  const open = (path: string): Promise<Page> => openAtDesk(path);
  const press = async (page: Page, name: string | RegExp, role: "button" | "link" = "button"): Promise<void> => {
    await page.getByRole(role, { name }).first().click();
    await settle(page);
  };

  it("take the signs of a part no linkage computes, and their grade follows", async () => {
    const page = await open(`${UNDERSIDE}/rear-left`);
    await press(page, /damper, leak/);
    await press(page, /^Oil film below the spring seat/);
    expect(await gradeOf(page)).toBe("Watch");
    await press(page, /^Wet, streams of oil/);
    expect(await gradeOf(page)).toBe("Repair first");
    expect(page.url()).toContain("rear-left/damper/leak:seen-film-below-seat,wet-streams");
    expect(await page.locator(".margin").textContent()).toContain("The linkage computes nothing from these signs");
    expect(await page.locator("svg [role='img'], .scene").first().textContent()).toContain("oil film below");
    await press(page, /^Wheel bearing|, wheel bearing/);
    await press(page, /^Rough when turned/);
    expect(await gradeOf(page)).toBe("Repair first");
    await press(page, /^Cannot be reached/);
    expect(await gradeOf(page)).toBe("Not looked at");
  });

  it("say do not drive for large play at a ball joint, in margin and drawing", async () => {
    const joint = "front-left/lower-arm/ball-joint";
    const page = await open(`${UNDERSIDE}?marks=${joint}:loose-10&at=${joint}`);
    expect(await gradeOf(page)).toBe("Do not drive");
    expect(await page.getByRole("button", { name: /lower arm, ball joint/ }).getAttribute("aria-label")).toMatch(
      /do not drive/i,
    );
    await openSheet(page, `${UNDERSIDE}?marks=${joint}:loose-0.5&at=${joint}`);
    expect(await gradeOf(page)).toBe("Repair first");
  });

  it("stay with the car line when it is left through Families, and come off and on again", async () => {
    const page = await open(`${UNDERSIDE}/rear-left?at=${TORN_BUSH}`);
    await press(page, /^Torn: plan/);
    await press(page, "Families", "link");
    await press(page, /^Underside of Ouzel saloon/, "link");
    expect(page.url()).toContain(`${TORN_BUSH}:torn-2`);
    expect(await page.locator(".margin").textContent()).toContain("This browser keeps the marks");
    await press(page, "Take all marks off");
    expect(page.url()).not.toContain("torn-2");
    await page.reload();
    await settle(page);
    expect(page.url()).not.toContain("torn-2");
    await press(page, "Undo: put them back");
    expect(page.url()).toContain(`${TORN_BUSH}:torn-2`);
  });

  it("kept here stand aside when an address brings others, and can be put back", async () => {
    const page = await open(`${UNDERSIDE}?marks=${TORN_BUSH}:torn-2`);
    await openSheet(page, `${UNDERSIDE}?marks=${TORN_BUSH}:torn-1`);
    expect(await page.locator(".margin").textContent()).toContain("one mark kept here before stand aside");
    await press(page, "Undo: put them back");
    expect(page.url()).toContain("torn-2");
  });

  it("kept here stay within reach when an address brought others and these are taken off and put back", async () => {
    const page = await open(`${UNDERSIDE}?marks=${TORN_BUSH}:torn-2`);
    await openSheet(page, `${UNDERSIDE}?marks=${TORN_BUSH}:torn-1`);
    await press(page, "Take all marks off");
    await press(page, "Undo: put them back");
    expect(page.url()).toContain("torn-1");
    expect(await page.locator(".margin").textContent()).toContain("one mark kept here before stand aside");
    await page.reload();
    await settle(page);
    await press(page, "Undo: put them back");
    expect(page.url()).toContain("torn-2");
    expect(await page.locator(".margin").textContent()).toContain("Taken off: one mark.");
  });

  it("are changed by nothing that is only looked at in Geometry", async () => {
    const page = await open(`/families/${FAMILY}/geometry?marks=${TORN_BUSH}:torn-3&at=${TORN_BUSH}`);
    await press(page, "Compare a firmer one");
    expect(await page.locator(".margin").textContent()).toContain("Only looked at. Marked on the Underside: torn");
    expect(await page.locator(".state-line").allTextContents()).toEqual([
      expect.stringMatching(/, firmer$/),
      expect.stringMatching(/, sound$/),
    ]);
    await press(page, "Underside", "link");
    expect(page.url()).toContain(`${TORN_BUSH}:torn-3`);
    expect(await gradeOf(page)).toBe("Repair first");
  });

  it("tell a firmer part by the hardness of both parts, ask for what is missing, and lose nothing that was typed", async () => {
    const page = await open(`${UNDERSIDE}/rear-left?marks=${TORN_BUSH}:firmer-2&at=${TORN_BUSH}`);
    const said = async (): Promise<string> => (await page.locator(".what-it-does").textContent()) ?? "";
    const type = async (field: string, text: string): Promise<void> => {
      await page.getByLabel(field).fill(text);
      await page.getByLabel(field).press("Enter");
      await settle(page);
    };
    await press(page, "By its hardness");
    expect(await said()).toContain("Asked for: the hardness of the old part");
    await type("New part", "65 Shore A");
    expect(page.url()).toContain("firmer-shore-x-65");
    await page.reload();
    await settle(page);
    expect(await page.getByLabel("New part").inputValue()).toBe("65");
    await type("Old part", "90");
    expect(await said()).toContain("“90” was typed: give a number from 20 to 80 Shore A");
    expect(await page.getByLabel("Old part").inputValue()).toBe("90");
    await type("Old part", "70,5");
    expect(await said()).toContain("The new part is softer, not firmer");
    await type("Old part", "55");
    expect(await said()).toContain("the firmer bush holds the rear left wheel");
    expect(await page.locator(".firmer-note").textContent()).toContain(
      "1.49 times the sound rate, 1.07 to 2.08 (95 %)",
    );
    await press(page, "See the curve", "link");
    expect(await gradeOf(page)).toBe("firmer, 55 to 65 Shore A");
    await type("New part", "56");
    expect(await page.locator(".margin").textContent()).toContain("Load both parts alike on the bench");
    expect(page.url()).toContain("firmer-shore-55-65");
  });

  it("give Geometry nothing to grade where there are none; it offers places", async () => {
    const page = await open(`/families/${FAMILY}/geometry`);
    expect(await gradeOf(page)).toBe("Nothing marked");
    expect(await page.locator("body").textContent()).not.toContain("Repair first");
    await press(page, "Trailing link, front bush");
    await press(page, /^Torn, repair first/);
    expect(await page.locator(".figure-huge").textContent()).toMatch(/\d/);
    expect(page.url()).not.toContain("marks=");
  });

  it("of another corner are left behind when a corner is opened", async () => {
    const page = await open(`${UNDERSIDE}?marks=${TORN_BUSH}:torn-3&at=${TORN_BUSH}`);
    await page.keyboard.press("2");
    await page.waitForURL(/underside\/front-left/);
    await settle(page);
    expect(page.url()).not.toContain("at=");
    expect(await page.locator(".margin h2").textContent()).toBe("Where do you look?");
  });

  it("are asked under the same force on Underside and in Geometry", async () => {
    const page = await open(`/families/${FAMILY}/geometry?marks=${TORN_BUSH}:torn-3&at=${TORN_BUSH}&braking_n=1000`);
    const figure = (await page.locator(".figure-huge").textContent()) ?? "no figure";
    await press(page, "Underside", "link");
    expect(await page.locator(".margin").textContent()).toContain("1.0 kN of braking");
    expect(await page.locator(".margin").textContent()).toContain(figure);
    await press(page, "See the curve", "link");
    expect(page.url()).toContain("braking_n=1000");
  });
});
