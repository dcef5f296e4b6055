import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { openPage } from "../browser-setup/fresh-page.ts";
import { tablet } from "../browser-setup/launch.ts";
import { findByAxe } from "./axe.ts";
import { openAtDesk, openSheet, settle } from "./open-sheet.ts";

const family = "/families/siskin-coupe";
const place = "front-left/tension-link/inner-bush";

describe("a hydraulic bush without its fluid", () => {
  const sentenceOn = async (page: Page): Promise<string> => {
    await page.getByText("Why nobody sees it").waitFor();
    await settle(page);
    return (
      (await page
        .getByText(/^Under light braking at about.*apart\. It begins near.*twice as far\.$/)
        .first()
        .textContent()) ?? ""
    );
  };

  it("is marked on the Underside, told there, and its curve is one step away; Back keeps the mark", async () => {
    const page = await openAtDesk(`${family}/underside/front-left?at=${place}`);
    await page.getByRole("button", { name: /^Fluid gone/ }).click();
    const told = await sentenceOn(page);
    expect(told).toMatch(/shakes \d+(\.\d)? times as far along the road as on a sound bush/);
    await page.getByRole("link", { name: "See the curve" }).click();
    expect(await sentenceOn(page)).toBe(told);
    await page.getByRole("img", { name: /Shake along the road over the road speed/ }).waitFor();
    await page.goBack();
    expect(await sentenceOn(page)).toBe(told);
    await page.reload();
    expect(await sentenceOn(page)).toBe(told);
  });

  it("is only looked at on Geometry until it is marked; its figures open to inputs, relation and source", async () => {
    const page = await openAtDesk(`${family}/geometry?at=${place}`);
    await page.getByRole("button", { name: /^Fluid gone/ }).click();
    await sentenceOn(page);
    expect(page.url()).toContain("as=fluid-gone");
    await page.getByText("Only looked at.").waitFor();
    await page.getByText("All inputs").click();
    await page.getByText("Thickness variation of the disc").first().waitFor();
    await page
      .getByText(/torque 2 mu k_c/)
      .first()
      .waitFor();
    expect(await findByAxe(page)).toEqual([]);
    const speed = page.getByRole("slider", { name: "Felt at" });
    await speed.fill("110");
    await page
      .getByText(/At 110 km\/h, where it is felt, it is \d.*\)\.$/)
      .first()
      .waitFor();
    await page.waitForURL(/felt_kmh=110/);
    await page.reload();
    await page
      .getByText(/At 110 km\/h, where it is felt, it is \d.*\)\.$/)
      .first()
      .waitFor();
    await page.getByRole("button", { name: "Mark it so" }).click();
    await page.getByText("Only looked at.").waitFor({ state: "detached" });
    expect(decodeURIComponent(page.url())).toContain(`${place}:fluid-gone`);
  });

  it("has thumb-high choices on a tablet", async () => {
    const page = await openPage(tablet);
    await openSheet(page, `${family}/underside/front-left?at=${place}`);
    const box = await page.getByRole("button", { name: /^Fluid gone/ }).boundingBox();
    expect(box?.height).toBeGreaterThanOrEqual(48);
  });
});
