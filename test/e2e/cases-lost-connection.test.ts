import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { launchBrowser, openSession, tablet } from "../browser-setup/launch.ts";
import { allStored, unsentKeys } from "./entries.ts";
import { settle } from "./open-sheet.ts";
import { type OwnProgram, startOwnProgram } from "./own-program.ts";

const KEPT_HERE = /kept here, not yet at the workshop's store/;

describe("while the workshop's store does not answer", () => {
  let browser: Browser;
  let program: OwnProgram;
  beforeAll(async () => {
    browser = await launchBrowser();
    program = await startOwnProgram();
  });
  afterAll(async () => {
    await browser.close();
    await program.end();
  });

  const takeIn = async (page: Page, words: string): Promise<string> => {
    await page.goto(program.address, { waitUntil: "load" });
    await page.getByLabel("Plate, name, or what the owner says").fill(words);
    await page.getByRole("button", { name: "Take in a car" }).click();
    await page.waitForURL(/\/enquiry$/);
    await page.getByLabel("The owner's words, as they were said").waitFor();
    await allStored(page);
    return /\/cases\/([^/]+)\//.exec(page.url())?.[1] ?? "";
  };

  const enquiryOf = async (visit: string): Promise<unknown> => {
    const answer = await fetch(`${program.address}/api/documents/enquiry/${visit}`);
    return ((await answer.json()) as { readonly document: unknown }).document;
  };

  it("an entry is kept in the browser, said to be, and stored once the store is back", async () => {
    const page = await (await openSession(browser, tablet)).newPage();
    const visit = await takeIn(page, "it wanders on the motorway and never holds its line");
    await program.stop();
    await page.getByLabel("The owner's words, as they were said").fill("it wanders, worse with a full tank");
    await page.getByLabel("The owner's words, as they were said").blur();
    await page.getByText(KEPT_HERE).waitFor();
    expect(await unsentKeys(page)).toHaveLength(1);
    await program.start();
    await page.getByText(KEPT_HERE).waitFor({ state: "detached" });
    await allStored(page);
    expect(await enquiryOf(visit)).toMatchObject({ words: "it wanders, worse with a full tank" });
  });

  it("what was typed outlives the page it was typed on", async () => {
    const session = await openSession(browser, tablet);
    const page = await session.newPage();
    const visit = await takeIn(page, "the pedal sinks while it is held at the lights");
    await program.stop();
    // Neither left nor followed by a pause: the page simply goes.
    await page.getByLabel("The owner's words, as they were said").fill("the pedal sinks, and the lamp is on");
    await page.close();
    await program.start();
    const later = await session.newPage();
    await later.goto(`${program.address}/cases/${visit}/enquiry`, { waitUntil: "load" });
    await settle(later);
    expect(await later.getByLabel("The owner's words, as they were said").inputValue()).toBe(
      "the pedal sinks, and the lamp is on",
    );
    await allStored(later);
    expect(await enquiryOf(visit)).toMatchObject({ words: "the pedal sinks, and the lamp is on" });
  });
});
