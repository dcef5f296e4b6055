import { mkdtempSync, truncateSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { describe, expect, inject, it } from "vitest";
import { openPage } from "../browser-setup/fresh-page.ts";
import { desk, type Screen } from "../browser-setup/launch.ts";
import { allStored, unsentKeys } from "./entries.ts";
import { openSheet, settle } from "./open-sheet.ts";

const files = mkdtempSync(join(tmpdir(), "underbench-photos-"));

const fileOf = (name: string, bytes: Uint8Array | number): string => {
  const path = join(files, name);
  if (typeof bytes === "number") {
    writeFileSync(path, "");
    truncateSync(path, bytes);
  } else writeFileSync(path, bytes);
  return path;
};

const MB = 1024 * 1024;
const HEIC = new Uint8Array([
  0,
  0,
  0,
  24,
  ...new TextEncoder().encode("ftypheic"),
  0,
  0,
  0,
  0,
  ...new TextEncoder().encode("mif1heic"),
]);

describe("what was not meant is asked about, and nothing typed is lost", () => {
  const send = async (path: string, method: string, body: unknown, headers: Record<string, string> = {}) =>
    fetch(`${inject("address")}${path}`, {
      method,
      body: JSON.stringify(body),
      headers: { "content-type": "application/json", ...headers },
    });

  /** A car that was here a year ago and is here again, of an invented family. */
  const carWithPast = async (
    name: string,
    screen: Screen = desk,
  ): Promise<{ readonly page: Page; readonly visit: string }> => {
    const isNew = { "if-none-match": "*" };
    const car = `car-${name}`;
    await send(
      `/api/documents/car/${car}`,
      "PUT",
      {
        by: "MK",
        document: {
          registration: name.toUpperCase(),
          name,
          family: "ouzel-saloon",
          variants: [],
          distance_unit: "km",
          odometer_offset_km: 0,
          invented: true,
        },
      },
      isNew,
    );
    const visitOf = (date: string, odometer: number | null) => ({
      by: "MK",
      document: { car, odometer_km: odometer, date, by: "MK", done: [], waits: [], closed: false },
    });
    await send(`/api/documents/visit/${car}-a`, "PUT", visitOf("2025-11-20", 100_000), isNew);
    await send(`/api/documents/visit/${car}-b`, "PUT", visitOf("2026-11-20", null), isNew);
    const page = await openPage(screen);
    return { page, visit: `${car}-b` };
  };

  const visitNow = async (visit: string): Promise<Record<string, unknown>> =>
    (
      (await (await fetch(`${inject("address")}/api/documents/visit/${visit}`)).json()) as {
        document: Record<string, unknown>;
      }
    ).document;

  it("miles in a field of kilometres are suggested as miles", async () => {
    const { page, visit } = await carWithPast("miles");
    await openSheet(page, `/cases/${visit}/car`);
    await page.getByLabel("Odometer", { exact: true }).fill("71500");
    await page.getByLabel("Odometer", { exact: true }).blur();
    await page.getByText("Odometer: is that so?").waitFor();
    expect(await page.getByLabel("Odometer", { exact: true }).inputValue()).toBe("71500");
    await page.getByRole("button", { name: /^It was read in miles/ }).click();
    await allStored(page);
    expect((await visitNow(visit)).odometer_km).toBeCloseTo(71_500 * 1.609_344, 3);
  });

  it("an odometer lower than last time may have been replaced", async () => {
    const { page, visit } = await carWithPast("replaced");
    await openSheet(page, `/cases/${visit}/car`);
    await page.getByLabel("Odometer", { exact: true }).fill("1200");
    await page.getByLabel("Odometer", { exact: true }).blur();
    await page.getByRole("button", { name: /^The odometer was replaced/ }).click();
    await allStored(page);
    expect((await visitNow(visit)).odometer_km).toBe(1200);
  });

  it("a reading ten times too large is asked about, stays in its field, and is stored once it is said to stand", async () => {
    const { page, visit } = await carWithPast("tenfold");
    await openSheet(page, `/cases/${visit}/readings`);
    const field = page.getByLabel("Front left, height, mm", { exact: true });
    await field.fill("3790");
    await field.blur();
    const asked = page.getByRole("region", { name: "Front left, height: asked again" });
    await asked.waitFor();
    expect(await asked.textContent()).toMatch(/Typed was 3790 mm; needed is .*200 to 600/);
    expect(await asked.textContent()).toContain("it is 379");
    expect(await field.inputValue()).toBe("3790");
    expect(await unsentKeys(page)).toHaveLength(1);
    await page.reload();
    await settle(page);
    expect(await field.inputValue()).toBe("3790");
    await asked.getByRole("button", { name: "It stands" }).click();
    await allStored(page);
    expect(await field.inputValue()).toBe("3790");
  });

  it("a device whose clock is a year off keeps its looks and is told", async () => {
    const { page, visit } = await carWithPast("clock");
    await page.clock.setFixedTime(new Date("2020-01-01T10:00:00Z"));
    await openSheet(page, `/cases/${visit}/readings`);
    const field = page.getByLabel("Front left, height, mm", { exact: true });
    await field.fill("382");
    await field.blur();
    await page.getByText(/The clock of this device is off/).waitFor();
    await allStored(page);
  });

  it.each([
    { name: "far-too-large.jpg", bytes: 300 * MB, says: /It is 300 MB; needed is at most 40 MB/ },
    { name: "phone.heic", bytes: HEIC, says: /HEIC.*JPEG/s },
    {
      name: "letter.jpg",
      bytes: new TextEncoder().encode("Dear workshop"),
      says: /needed is a JPEG, PNG or WebP photo/,
    },
  ])("$name is refused in plain words", async ({ name, bytes, says }) => {
    const { page, visit } = await carWithPast(`photo-${name.replace(/\W/g, "-")}`);
    const place = "rear-left/trailing-link/inner-bush";
    await openSheet(page, `/cases/${visit}/underside/rear-left?at=${place}`);
    const asked: string[] = [];
    page.on("request", (request) => asked.push(request.url()));
    await page.getByLabel("Add a photo").setInputFiles(fileOf(name, bytes));
    const refused = page.getByRole("region", { name: `${name}: asked again` });
    await refused.waitFor();
    expect(await refused.textContent()).toMatch(says);
    if (typeof bytes === "number") expect(asked.filter((url) => url.endsWith("/api/photos"))).toEqual([]);
    await page.getByRole("button", { name: "Web torn" }).click();
    await allStored(page);
  });

  it("a look sent twice stands once", async () => {
    const { page, visit } = await carWithPast("twice");
    await openSheet(page, `/cases/${visit}/underside/rear-left?at=rear-left/trailing-link/inner-bush`);
    let cut = true;
    // The store takes the look, but its answer is lost on the way: the page sends it again.
    await page.route("**/api/looks", async (route) => {
      if (!cut) return route.continue();
      cut = false;
      await route.fetch();
      return route.abort();
    });
    await page.getByRole("button", { name: "Web torn" }).click();
    await allStored(page);
    const car = await fetch(`${inject("address")}/api/cars/car-twice`);
    const { looks } = (await car.json()) as { readonly looks: readonly unknown[] };
    expect(looks).toHaveLength(1);
  });
});
