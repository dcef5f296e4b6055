import type { Page } from "playwright-core";
import { beforeAll, describe, expect, it } from "vitest";
import { openPage } from "../browser-setup/fresh-page.ts";
import { desk, tablet } from "../browser-setup/launch.ts";
import { findByAxe } from "./axe.ts";
import { allStored } from "./entries.ts";
import { listenForComplaints, openSheet, settle } from "./open-sheet.ts";
import { ask, putCarAndVisit, putLooks, putNew } from "./recorded-visit.ts";

const CAR = "visits-and-suspects";

/** A car with a torn rear bush and worn front discs, whose owner complains of a clunk at the rear. */
const putCar = async (): Promise<void> => {
  await putCarAndVisit(CAR, "ouzel-saloon");
  await putNew("enquiry", CAR, {
    words: "it clunks at the rear",
    symptoms: [
      {
        symptom: "clunk-over-bumps-rear",
        side: "left",
        axle: "rear",
        conditions: { speed_kph: null, temperature: null, load: null, steering: null, braking: null },
        since: null,
      },
    ],
    use: null,
  });
  const signs = (place: string, sign: string) => ({ place, content: { kind: "signs", signs: [sign] } });
  await putLooks(CAR, CAR, 0x71, [
    signs("rear-left/trailing-link/inner-bush", "web-torn"),
    signs("front-left/bar-link", "play-felt"),
    signs("rear-left/bar-link", "play-felt"),
  ]);
};

const openStage = async (screen: typeof desk, stage: string): Promise<Page> => {
  const page = await openPage(screen);
  await openSheet(page, `/cases/${CAR}/${stage}`);
  return page;
};

const document = async (kind: string): Promise<Readonly<Record<string, unknown>>> =>
  ((await ask(`/api/documents/${kind}/${CAR}`)) as { readonly document: Readonly<Record<string, unknown>> }).document;

describe("the visits of a plan and what is said of suspects", () => {
  beforeAll(async () => {
    await putCar();
  });

  it("changes the visits on the page, refuses a bad order where it was typed, and takes a change back", async () => {
    const page = await openStage(desk, "plan");
    const complaints = listenForComplaints(page);
    await page.getByRole("button", { name: "Change the visits" }).click();
    const second = page.getByRole("group", { name: /^Visit 3/ }).getByLabel("Odometer");
    await second.fill("130000");
    await second.press("Enter");
    await expect
      .poll(() => page.getByRole("group", { name: /^Visit 3/ }).textContent())
      .toMatch(/typed was 130.000 km; needed is more than 143.440 km of the visit before, Next service/);
    await second.fill("150000");
    await second.press("Enter");
    await settle(page);
    await page.getByRole("button", { name: "Add a visit" }).click();
    await settle(page);
    await allStored(page);
    const odometers = async () =>
      ((await document("plan")).visits as readonly { readonly odometer_km: number }[]).map((v) => v.odometer_km);
    expect(await odometers()).toEqual([128_440, 143_440, 150_000, 156_560]);
    expect(await page.locator(".plan-totals thead th").count()).toBe(5);
    await page.getByRole("button", { name: /^Undo/ }).click();
    await settle(page);
    await allStored(page);
    expect(await odometers()).toEqual([128_440, 143_440, 150_000]);
    await page.reload();
    await settle(page);
    expect(await second.inputValue()).toBe("150000");
    expect(await findByAxe(page)).toEqual([]);
    expect(complaints).toEqual([]);
  });

  it("opens each price to lines that add up to it, and says what declining one does to the others", async () => {
    const page = await openStage(tablet, "plan");
    await page.locator(".plan-price-opens").first().click();
    await settle(page);
    const cents = (text: string): number => Math.round(100 * Number(text.replace(/[^\d.]/g, "")));
    const lines = await page.locator(".price-facts tbody td").allTextContents();
    const total = (await page.locator(".price-opens .figure-large").textContent()) ?? "";
    expect(lines.map(cents).reduce((sum, c) => sum + c, 0)).toBe(cents(total));
    expect(page.url()).toContain("price=true");
    await page.getByRole("button", { name: "The owner declines" }).click();
    await expect.poll(() => page.locator(".plan-repriced").textContent()).toMatch(/^Declined: .*priced again:.*was /s);
    await page.getByRole("button", { name: "Take it in again" }).click();
    await expect.poll(() => page.locator(".plan-repriced").textContent()).toContain("Taken in again");
  });

  it("rules a suspect out and takes it back, each word kept with who said it", async () => {
    const page = await openStage(desk, "findings");
    const first = page.locator(".suspect-row .found-name").first();
    const lead = (await first.textContent()) ?? "";
    await first.click();
    await page.getByRole("button", { name: "Rule out" }).click();
    await expect.poll(() => page.locator(".ruled-out").textContent()).toContain(lead);
    expect(await first.textContent()).not.toBe(lead);
    await page.reload();
    await settle(page);
    expect(await page.locator(".ruled-out").textContent()).toContain(lead);
    expect(await page.locator(".suspect-verdict").textContent()).toContain("Ruled out");
    await page.locator(".chance-facts summary").click();
    expect(await page.locator(".chance-facts").textContent()).toContain("trade-symptoms");
    expect(await findByAxe(page)).toEqual([]);
    await page.getByRole("button", { name: "Take it back" }).click();
    await expect.poll(() => first.textContent()).toBe(lead);
    await allStored(page);
    const said = (await document("enquiry")).suspects as readonly { readonly word: string; readonly by: string }[];
    expect(said.map(({ word }) => word)).toEqual(["ruled-out", "open"]);
  });

  it("has what cures an accepted cause done now", async () => {
    const page = await openStage(desk, "findings");
    await page.locator(".suspect-row", { hasText: "Anti-roll-bar link play" }).click();
    await page.getByRole("button", { name: "Accept as the cause" }).click();
    await expect.poll(() => page.locator(".suspect-said").textContent()).toContain("What cures it is done now");
    await page.getByRole("link", { name: "See the plan" }).first().click();
    await settle(page);
    await expect
      .poll(() => page.getByRole("region", { name: "Now" }).textContent())
      .toContain("cures the accepted cause");
  });
});
