import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { focused } from "./focus.ts";
import { openAtDesk, openSheet, settle } from "./open-sheet.ts";
import { FAMILY, TORN_BUSH } from "./sheets.ts";

describe("everything by keyboard", () => {
  const open = (path: string): Promise<Page> => openAtDesk(path);

  it("begins with a link past the head", async () => {
    const page = await open("/");
    await page.keyboard.press("Tab");
    expect((await focused(page))?.name).toBe("Skip to the drawing");
    await page.keyboard.press("Enter");
    expect(await page.evaluate(() => document.activeElement?.id)).toBe("drawing");
  });

  it("lists the keys of the page and gives the focus back", async () => {
    const page = await open(`/families/${FAMILY}/underside`);
    await page.keyboard.press("?");
    expect(await page.getByRole("dialog").textContent()).toContain("open the rear left corner");
    await page.keyboard.press("Escape");
    expect(await page.getByRole("dialog").count()).toBe(0);
  });

  it("moves through the list of keys by arrow, and a key pressed there does what it says", async () => {
    const page = await open(`/families/${FAMILY}`);
    await page.keyboard.press("?");
    const rows = page.getByRole("dialog").locator("button.key-row");
    expect(await rows.count()).toBe(2);
    const first = await focused(page);
    await page.keyboard.press("ArrowDown");
    expect((await focused(page))?.name).not.toBe(first?.name);
    await page.keyboard.press("Home");
    expect(await focused(page)).toEqual(first);
    await page.keyboard.press("Enter");
    await page.waitForURL(/\/underside$/);
    expect(await page.getByRole("dialog").count()).toBe(0);
  });

  it("puts the focus on the heading of a page that was gone to", async () => {
    const page = await open("/counter");
    await page.getByRole("link", { name: "Bench" }).focus();
    await page.keyboard.press("Enter");
    await page.waitForURL(/\/bench$/);
    await settle(page);
    await page.waitForFunction(() => document.activeElement?.tagName === "H1");
    expect((await focused(page))?.name).toBe("Bench");
    // A page whose link goes with the page it stood on, and that takes a while to load.
    await openSheet(page, `/families/${FAMILY}`);
    await page.locator(".margin").getByRole("link", { name: "Underside" }).focus();
    await page.keyboard.press("Enter");
    await page.waitForURL(/\/underside$/);
    await page.waitForFunction(() => document.activeElement?.tagName === "H1");
  });

  it("goes from the whole car to a torn bush, and back is undo", async () => {
    const page = await open(`/families/${FAMILY}/underside`);
    await page.keyboard.press("4");
    await page.waitForURL(/underside\/rear-left/);
    await settle(page);
    const first = page.locator(".target[tabindex='0']");
    await first.focus();
    const before = await focused(page);
    await page.keyboard.press("ArrowDown");
    expect((await focused(page))?.name).not.toBe(before?.name);
    await page.getByRole("button", { name: /trailing link, front bush/ }).focus();
    await page.keyboard.press("Enter");
    await page.getByRole("button", { name: "Torn: plan" }).focus();
    await page.keyboard.press("Enter");
    await page.waitForURL(/torn-2/);
    await settle(page);
    expect(await page.locator(".margin").textContent()).toContain("lets the rear left wheel turn");
    await page.goBack();
    await settle(page);
    expect(page.url()).not.toContain("torn-2");
    expect(await page.locator(".margin .margin-grade").textContent()).toContain("Not looked at");
  });

  it("moves the sliders by arrow, page, home and end, and the figure follows", async () => {
    const page = await open(`/families/${FAMILY}/geometry?at=${TORN_BUSH}&as=torn-3`);
    const figure = page.locator(".figure-huge");
    const before = await figure.textContent();
    const load = page.getByRole("slider", { name: "Braking at this wheel" });
    await load.focus();
    const valueAfter = async (key: string): Promise<number> => {
      await page.keyboard.press(key);
      return Number(await load.inputValue());
    };
    const start = Number(await load.inputValue());
    expect(await valueAfter("ArrowRight")).toBe(start + 100);
    expect(await valueAfter("PageUp")).toBeGreaterThan(start + 100);
    expect(await valueAfter("Home")).toBe(0);
    expect(await valueAfter("End")).toBe(4000);
    await settle(page);
    expect(await load.getAttribute("aria-valuetext")).toBe("4.0 kN");
    expect(await figure.textContent()).not.toBe(before);
    await page.waitForURL(/braking_n=4000/);
  });
});
