import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { desk } from "../browser-setup/launch.ts";
import { findByAxe } from "./axe.ts";
import { openAtDesk, openSheet, settle } from "./open-sheet.ts";

const NAME = "Redshank wagon";

describe("a car line begun from a silhouette", () => {
  const open = (path: string): Promise<Page> => openAtDesk(path);
  const field = (page: Page, label: string) => page.getByLabel(label, { exact: true });
  const make = async (page: Page, name: string): Promise<string> => {
    await field(page, "Name").fill(name);
    await page.getByRole("button", { name: "Make this car line" }).click();
    await page.waitForURL(/\/underside/);
    return /families\/([^/]+)\//.exec(page.url())?.[1] ?? "";
  };

  it("keeps its entries through reload and Back until they are used", async () => {
    const page = await open("/families/begin");
    await field(page, "Name").fill("Half typed");
    await field(page, "Wheelbase").fill("2,835");
    await page.reload();
    await settle(page);
    expect(await field(page, "Name").inputValue()).toBe("Half typed");
    await page.getByRole("link", { name: "Counter" }).click();
    await page.waitForURL(/counter/);
    await page.goBack();
    await settle(page);
    expect(await field(page, "Wheelbase").inputValue()).toBe("2,835");
    await page.getByRole("button", { name: "Start over" }).click();
    expect(await field(page, "Name").inputValue()).toBe("");
    expect(await field(page, "Wheelbase").inputValue()).toBe("");
    expect(await page.locator(".begin-preview").textContent()).toContain("wheelbase 2700 (assumed)");
  });

  it("takes a number as people write it, and asks where it may be two", async () => {
    const page = await open("/families/begin");
    const wheelbase = field(page, "Wheelbase");
    await wheelbase.click();
    await page.keyboard.type("2,510");
    expect(await wheelbase.inputValue()).toBe("2,510");
    expect(await wheelbase.getAttribute("aria-invalid")).toBe("false");
    // A long van, seen without scrolling on a lying tablet.
    await page.setViewportSize({ width: 1024, height: 768 });
    await wheelbase.fill("4325");
    await settle(page);
    expect(await wheelbase.getAttribute("aria-invalid")).toBe("false");
    await page.getByText("Not offered yet").scrollIntoViewIfNeeded();
    const drawn = await page.locator(".begin-preview svg").first().boundingBox();
    expect(drawn?.y).toBeGreaterThan(0);
    expect((drawn?.y ?? 0) + (drawn?.height ?? 9999)).toBeLessThanOrEqual(768);
    expect(await page.locator(".begin-preview").textContent()).toContain("wheelbase 4325");
    await page.setViewportSize(desk);
    const lowered = field(page, "Front lowered");
    await lowered.click();
    await page.keyboard.type("−12,5");
    expect(await lowered.getAttribute("aria-invalid")).toBe("false");
    const track = field(page, "Front track");
    await track.fill("1,234");
    expect(await track.getAttribute("aria-invalid")).toBe("true");
    const note = await page.locator(".field", { has: track }).locator(".note").textContent();
    expect(note).toContain("1234 or 1.234 mm");
    expect(await track.inputValue()).toBe("1,234");
    await field(page, "Weight on front").fill("90");
    expect(
      await page
        .locator(".field", { has: field(page, "Weight on front") })
        .locator(".note")
        .textContent(),
    ).toBe("give 35 to 70 %");
  });

  it("is corrected under the same id, renamed, told from a namesake, taken off the list and put back", async () => {
    const page = await open("/families/begin");
    const id = await make(page, NAME);
    await openSheet(page, `/families/${id}`);
    await page.getByRole("link", { name: "Correct its entries" }).click();
    await page.waitForURL(/correct=/);
    await settle(page);
    expect(await field(page, "Name").inputValue()).toBe(NAME);
    await field(page, "Wheelbase").fill("2880");
    await page.getByRole("button", { name: "Keep the correction" }).click();
    await page.waitForURL(new RegExp(`/families/${id}$`));
    await settle(page);

    await openSheet(page, "/families/begin");
    await field(page, "Name").fill(NAME);
    await page.getByText(`kept as “${NAME} 2”`).waitFor();
    const twin = await make(page, NAME);
    await openSheet(page, `/families/${twin}`);
    await page.getByRole("button", { name: "Rename" }).click();
    await page.locator(".rename input").fill(NAME);
    expect(await page.getByRole("button", { name: "Keep this name" }).isDisabled()).toBe(true);
    await page.locator(".rename input").fill("Redshank coach");
    expect(await findByAxe(page)).toEqual([]);
    await page.getByRole("button", { name: "Keep this name" }).click();
    await page.getByRole("heading", { level: 1, name: "Redshank coach" }).waitFor();

    await page.getByRole("button", { name: "Take off the list" }).click();
    await page.waitForURL(/off=/);
    await settle(page);
    const row = page.locator(".family-row", { hasText: "Redshank coach" });
    expect(await row.count()).toBe(0);
    expect(await findByAxe(page)).toEqual([]);
    await openSheet(page, `/families/${twin}/underside`);
    expect(await page.getByRole("heading", { level: 1 }).textContent()).toBe("Redshank coach");
    await page.goBack();
    await settle(page);
    await page.locator(".just-off").getByRole("button", { name: "Put it back: Redshank coach" }).click();
    await row.waitFor();
    expect(await page.locator(".family-row", { hasText: NAME }).count()).toBe(1);
  });
});
