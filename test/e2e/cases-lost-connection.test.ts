import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openPage } from "../browser-setup/fresh-page.ts";
import { tablet } from "../browser-setup/launch.ts";
import { allStored, unsentKeys } from "./entries.ts";
import { settle } from "./open-sheet.ts";
import { type OwnProgram, startOwnProgram } from "./own-program.ts";

/** A picture of one dot. */
const ONE_DOT = "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==";

const KEPT_HERE = /kept here, not yet at the workshop's store/;

describe("while the workshop's store does not answer", () => {
  let program: OwnProgram;
  beforeAll(async () => {
    program = await startOwnProgram();
  });
  afterAll(async () => {
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
    const page = await openPage(tablet);
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
    const page = await openPage(tablet);
    const session = page.context();
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

  it("a photo is kept while the store is silent, outlives the next place and a reload, and is sent when it is back", async () => {
    const page = await openPage(tablet);
    await page.goto(program.address, { waitUntil: "load" });
    const isNew = { "content-type": "application/json", "if-none-match": "*" };
    const put = async (path: string, document: unknown) => {
      const body = JSON.stringify({ by: "MK", document });
      const answer = await fetch(`${program.address}/api/documents/${path}`, { method: "PUT", body, headers: isNew });
      expect(answer.status).toBeLessThan(300);
    };
    await put("car/car-photo", {
      registration: "PHOTO",
      name: "photo",
      family: "ouzel-saloon",
      variants: [],
      distance_unit: "km",
      odometer_offset_km: 0,
      invented: true,
    });
    await put("visit/visit-photo", {
      car: "car-photo",
      odometer_km: null,
      date: "2026-11-20",
      by: "MK",
      done: [],
      waits: [],
      closed: false,
    });
    const place = `${program.address}/cases/visit-photo/underside/rear-left?at=rear-left/trailing-link/inner-bush`;
    await page.goto(place, { waitUntil: "load" });
    await settle(page);
    await page.getByLabel("Add a photo").waitFor();
    await program.stop();
    await page
      .getByLabel("Add a photo")
      .setInputFiles({ name: "bush.png", mimeType: "image/png", buffer: Buffer.from(ONE_DOT, "base64") });
    await page.getByText("bush.png: kept in this browser, not yet at the store").waitFor();
    await page.getByText(KEPT_HERE).waitFor();
    await page.getByRole("button", { name: /^Next:/ }).click();
    const hash = (await unsentKeys(page)).find((key) => key.includes("photo."))?.split("photo.")[1] ?? "";
    expect(hash).toMatch(/^[0-9a-f]{64}$/);
    await page.close();
    await program.start();
    const later = await page.context().newPage();
    await later.goto(place, { waitUntil: "load" });
    await settle(later);
    await allStored(later);
    const stored = await fetch(`${program.address}/api/photos/${hash}`);
    expect(Buffer.from(await stored.arrayBuffer()).toString("base64")).toBe(ONE_DOT);
    await later.getByRole("img", { name: "1 of this place" }).waitFor();
  });
});
