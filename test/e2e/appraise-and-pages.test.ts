import { readFileSync } from "node:fs";
import { PassThrough, Readable } from "node:stream";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { formatChance, formatMoney } from "#casework";
import { gradeWords } from "#drawing";
import { runCommandLine } from "../../src/cli/index.ts";
import { desk, openSession } from "../browser-setup/launch.ts";
import { openSheet, settle } from "./open-sheet.ts";
import { ask, putCarAndVisit, putLooks, putNew } from "./recorded-visit.ts";

const ID = "file-and-pages";

interface Price {
  readonly total_cents: number;
}
interface AppraisalSheet {
  readonly findings: readonly {
    readonly place: string;
    readonly grade: 0 | 1 | 2 | 3 | 4;
    readonly found: string;
    readonly too_close_to_call: boolean;
    readonly effect: { readonly sentence: string } | null;
  }[];
  readonly suspects: {
    readonly suspects: readonly { readonly label: string; readonly cures: number }[];
    readonly two_at_once: number;
  };
  readonly plan: {
    readonly visits: readonly { readonly label: string; readonly total_cents: number }[];
    readonly remedies: readonly {
      readonly remedy: string;
      readonly label: string;
      readonly visit: number | null;
      readonly price: Price | null;
    }[];
  };
  readonly job_card: { readonly steps: readonly { readonly label: string }[] };
}

const example = JSON.parse(readFileSync(new URL("../../docs/examples/visit.json", import.meta.url), "utf8"));

/** What the command line makes of a visit file. */
const appraiseFile = async (file: unknown): Promise<AppraisalSheet> => {
  const output = new PassThrough();
  const problems = new PassThrough();
  const written = output.toArray();
  const status = await runCommandLine(["appraise", "-", "--json"], {
    terminal: { input: Readable.from([JSON.stringify(file)]), output, problems },
    serve: async () => {},
  });
  expect(status, problems.read()?.toString()).toBe(0);
  output.end();
  return JSON.parse(Buffer.concat(await written).toString()) as AppraisalSheet;
};

const texts = (page: Page, selector: string): Promise<string[]> => page.locator(selector).allTextContents();

describe("a visit in one file and the same visit on record", () => {
  let page: Page;
  let told: AppraisalSheet;
  beforeAll(async () => {
    page = await (await openSession(desk)).newPage();
    const settings = (await ask("/api/documents/settings/shop")) as { readonly document: typeof example.rates };
    const { workshop, currency, labour_cents_per_hour, tax_share, visit_cents } = settings.document;
    await putCarAndVisit(ID, example.family.id);
    await putNew("enquiry", ID, example.enquiry);
    await putLooks(ID, ID, 9, example.looks);
    told = await appraiseFile({
      ...example,
      looks_before: [],
      rates: { workshop, currency, labour_cents_per_hour, tax_share, visit_cents },
    });
  });
  afterAll(() => page.context().close());

  it("come to the same, to the last digit", async () => {
    const recorded = (await ask(`/api/visits/${ID}/appraisal`)) as AppraisalSheet;
    expect({ ...recorded, stages: null }).toEqual({ ...told, stages: null });
  });

  it("say the same findings and suspects on the page", async () => {
    await openSheet(page, `/cases/${ID}/findings`);
    const worth = told.findings.filter((f) => f.grade > 0 || f.too_close_to_call);
    const rows = await texts(page, ".found-rows .found-row");
    expect(rows).toHaveLength(worth.length);
    for (const [i, finding] of worth.entries()) {
      expect(rows[i]).toContain(finding.found);
      expect(rows[i]).toContain(gradeWords[finding.grade]);
    }
    const shown = await texts(page, ".suspect-row");
    for (const [i, row] of shown.entries()) {
      const suspect = told.suspects.suspects[i];
      expect(row).toContain(suspect?.label);
      expect(row).toContain(formatChance(suspect?.cures ?? 0).replace(" %", ""));
    }
    expect((await texts(page, ".suspect-rest")).join()).toContain(formatChance(told.suspects.two_at_once));
    const torn = worth.find((f) => f.effect !== null);
    await page.locator(".found-row").first().click();
    expect(await page.locator(".effect-sentence").textContent()).toBe(torn?.effect?.sentence);
  });

  it("say the same prices in the plan, and the page prices the rest again when one is declined", async () => {
    await openSheet(page, `/cases/${ID}/plan`);
    const currency = "EUR";
    const prices = async (): Promise<string[]> =>
      texts(page, ".plan-row:not([data-declined='true']) .plan-price > :first-child");
    const priced = told.plan.remedies.filter((r) => r.price !== null);
    const expected = priced.map((r) => formatMoney(r.price?.total_cents ?? 0, currency));
    expect((await prices()).filter((p) => p.includes(currency)).toSorted()).toEqual(expected.toSorted());
    expect((await texts(page, ".plan-total td"))[0]).toBe(formatMoney(told.plan.visits[0]?.total_cents ?? 0, currency));

    await page.locator(".plan-pick").first().click();
    await page.getByRole("button", { name: "The owner declines" }).click();
    await settle(page);
    await expect.poll(async () => (await prices()).filter((p) => p.includes(currency)).length).toBe(priced.length - 1);
    await expect
      .poll(
        async () =>
          ((await ask(`/api/visits/${ID}/appraisal`)) as AppraisalSheet).plan.remedies.filter((r) => r.price !== null)
            .length,
      )
      .toBe(priced.length - 1);
    const left = ((await ask(`/api/visits/${ID}/appraisal`)) as AppraisalSheet).plan;
    const again = left.remedies.filter((r) => r.price !== null);
    expect((await prices()).filter((p) => p.includes(currency)).toSorted()).toEqual(
      again.map((r) => formatMoney(r.price?.total_cents ?? 0, currency)).toSorted(),
    );
    for (const [i, visit] of left.visits.entries()) {
      const sum = again.filter((r) => r.visit === i).reduce((total, r) => total + (r.price?.total_cents ?? 0), 0);
      expect(sum).toBe(visit.total_cents);
    }
    const before = new Map(priced.map((r) => [r.remedy, r.price?.total_cents]));
    expect(again.some((r) => r.price?.total_cents !== before.get(r.remedy))).toBe(true);
  });

  it("go through agreement to signed steps that stand on record", async () => {
    await openSheet(page, `/cases/${ID}/plan`);
    await page.locator(".plan-agree", { hasText: "Agree" }).first().click();
    await settle(page);
    await openSheet(page, `/cases/${ID}/job-card`);
    const tick = page.locator(".step-tick").first();
    await tick.click();
    expect(await page.locator(".step-row[data-done='true']").count()).toBe(0);
    await page.getByLabel("Who signs?").fill("I. Marden");
    await page.getByRole("button", { name: "Sign with this name from now on" }).click();
    await tick.click();
    await settle(page);
    await expect.poll(() => page.locator(".step-signed").first().textContent()).toContain("I. Marden");
    expect(await page.locator(".stage-open").textContent()).toContain("Still open: 2 Lift at the maker's points");
    await expect.poll(() => page.locator(".step-row[data-done='true']").count()).toBe(1);
    await expect
      .poll(async () => {
        const { job_card } = (await ask(`/api/visits/${ID}/appraisal`)) as AppraisalSheet & {
          readonly job_card: { readonly done: number };
        };
        return job_card.done;
      })
      .toBe(1);
    await openSheet(page, `/cases/${ID}/hand-over`);
    expect(await page.getByRole("button", { name: "Sign the hand-over" }).isDisabled()).toBe(true);
    await page.getByRole("button", { name: /^Pass over: Road test/ }).click();
    await page.getByLabel(/^Why is this passed over/).fill("snow on the road");
    await page.getByRole("button", { name: "Pass over with this reason" }).click();
    await expect
      .poll(() => page.locator(".gate-row[data-state='passed-over']").textContent())
      .toContain("snow on the road");
  });
});
