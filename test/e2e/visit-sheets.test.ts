import { mkdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { launchBrowser, openSession, tablet } from "../browser-setup/launch.ts";
import { findByAxe } from "./axe.ts";
import { listenForComplaints, openSheet, settle } from "./open-sheet.ts";
import { ask, putCarAndVisit, putLooks, putNew } from "./recorded-visit.ts";
import { SIZES, THEMES } from "./sheets.ts";
import { overlapping, pressable, small } from "./thumb.ts";

const ID = "seen-visit";
const EMPTY = "seen-empty";
const results = fileURLToPath(new URL("../../test-results/sheets", import.meta.url));
const example = JSON.parse(readFileSync(new URL("../../docs/examples/visit.json", import.meta.url), "utf8"));
const TORN = "rear-left/trailing-link/inner-bush";

/** Pages of the second half of a visit by the name of their pictures. */
const PAGES = [
  { name: "visit-findings", path: `${ID}/findings` },
  { name: "visit-finding", path: `${ID}/findings?at=${TORN}` },
  { name: "visit-suspect", path: `${ID}/findings?suspect=caliper-guide-seized` },
  { name: "visit-findings-none", path: `${EMPTY}/findings` },
  { name: "visit-plan", path: `${ID}/plan` },
  { name: "visit-plan-remedy", path: `${ID}/plan?remedy=rear-trailing-bush@rear` },
  { name: "visit-plan-none", path: `${EMPTY}/plan` },
  { name: "visit-job-card", path: `${ID}/job-card` },
  { name: "visit-job-step", path: `${ID}/job-card?step=final-torque` },
  { name: "visit-job-card-none", path: `${EMPTY}/job-card` },
  { name: "visit-hand-over", path: `${ID}/hand-over` },
] as const;

interface Appraised {
  readonly plan: { readonly remedies: readonly { readonly remedy: string; readonly grade: number }[] };
  readonly job_card: { readonly steps: readonly { readonly step: string; readonly needs_ride_height: boolean }[] };
}

describe("the sheets of the second half of a visit", () => {
  let browser: Browser;
  /** Id of the first step that asks for the ride height. */
  let finalTorque = "";
  beforeAll(async () => {
    browser = await launchBrowser();
    mkdirSync(results, { recursive: true });
    await putCarAndVisit(EMPTY, example.family.id);
    await putCarAndVisit(ID, example.family.id);
    await putNew("enquiry", ID, example.enquiry);
    await putLooks(ID, ID, 11, example.looks);
    const { plan } = (await ask(`/api/visits/${ID}/appraisal`)) as Appraised;
    const at = "2026-03-12T10:00:00Z";
    await putNew("plan", ID, {
      visits: [
        { label: "Now", odometer_km: 128_440 },
        { label: "Next service", odometer_km: 143_440 },
        { label: "Second service", odometer_km: 158_440 },
      ],
      declined: [],
      agreed: plan.remedies.filter((r) => r.grade >= 2).map(({ remedy }) => ({ remedy, by: "owner", at })),
      fixed: [],
      horizon_km: 165_940,
    });
    const step = { done_by: "I. Marden", at, hub_to_arch_mm: null, torque_nm: null, note: null };
    const { job_card } = (await ask(`/api/visits/${ID}/appraisal`)) as Appraised;
    finalTorque = job_card.steps.find((s) => s.needs_ride_height)?.step ?? "";
    await putNew("job-card", ID, {
      steps: [
        { ...step, step: "before/heights" },
        { ...step, step: "before/lift" },
      ],
    });
  });
  afterAll(() => browser.close());

  const open = (page: Page, path: string): Promise<void> =>
    openSheet(page, `/cases/${path.replace("final-torque", finalTorque)}`);

  const seen = SIZES.flatMap((size) => PAGES.map((sheet) => ({ ...size, ...sheet })));
  it.each(seen)("$name at $width x $height: its pictures, nothing for axe to find, no complaint", async (sheet) => {
    const session = await openSession(browser, sheet);
    const page = await session.newPage();
    const complaints = listenForComplaints(page);
    await open(page, sheet.path);
    for (const [turn, theme] of THEMES.entries()) {
      await page.emulateMedia({ colorScheme: theme });
      await settle(page);
      await page.screenshot({ path: join(results, `${sheet.name}-${sheet.width}x${sheet.height}-${theme}.png`) });
      if (sheet.width !== 1024) expect.soft(await findByAxe(page, turn === 0 ? "all" : "contrast"), theme).toEqual([]);
    }
    expect.soft(complaints).toEqual([]);
    const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(overflow, "wider than the screen").toBeLessThanOrEqual(0);
    await session.close();
  });

  it.each(PAGES)("$name on an upright tablet: nothing to press overlaps, all as large as a thumb", async ({ path }) => {
    const session = await openSession(browser, tablet);
    const page = await session.newPage();
    await open(page, path);
    for (const part of [".head", ".drawing", ".margin"]) {
      const boxes = await pressable(page, part);
      expect.soft(overlapping(boxes), part).toEqual([]);
      expect.soft(small(boxes), part).toEqual([]);
    }
    await session.close();
  });
});
