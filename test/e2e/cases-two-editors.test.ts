import type { Page } from "playwright-core";
import { describe, expect, inject, it } from "vitest";
import { openPage } from "../browser-setup/fresh-page.ts";
import { desk } from "../browser-setup/launch.ts";
import { findByAxe } from "./axe.ts";
import { allStored } from "./entries.ts";
import { openSheet } from "./open-sheet.ts";

const load = async (path: string): Promise<{ readonly version: number; readonly document: Record<string, unknown> }> =>
  (await (await fetch(`${inject("address")}${path}`)).json()) as never;

describe("a car two people edit at once", () => {
  const openCar = async (visit: string): Promise<Page> => {
    const page = await openPage(desk);
    await openSheet(page, `/cases/${visit}/car`);
    return page;
  };

  const begin = async (): Promise<string> => {
    const page = await openPage(desk);
    await openSheet(page, "/");
    await page.getByLabel("Plate, name, or what the owner says").fill("Two editors");
    await page.getByRole("button", { name: "Take in a car" }).click();
    await page.waitForURL(/\/enquiry$/);
    await allStored(page);
    return /\/cases\/([^/]+)\//.exec(page.url())?.[1] ?? "";
  };

  it("the second sees both versions, chooses line by line, and nothing of either is lost", async () => {
    const visit = await begin();
    const { document } = await load(`/api/documents/visit/${visit}`);
    const car = String(document.car);
    const [first, second] = [await openCar(visit), await openCar(visit)];

    await first.getByLabel("Owner", { exact: true }).fill("A. Tern");
    await first.getByLabel("Year", { exact: true }).fill("2014");
    await first.getByLabel("Year", { exact: true }).blur();
    await allStored(first);
    await second.getByLabel("Owner", { exact: true }).fill("B. Wren");
    await second.getByLabel("Owner", { exact: true }).blur();

    const both = second.getByRole("region", { name: /^Two versions/ });
    await both.waitFor();
    expect(await both.getByRole("row", { name: /^Owner/ }).textContent()).toMatch(/B\. Wren[\s\S]*A\. Tern/);
    expect.soft(await findByAxe(second)).toEqual([]);
    // The year was changed by the first alone: theirs is chosen already.
    expect(await both.getByRole("radio", { name: /theirs: 2014/ }).isChecked()).toBe(true);
    await both.getByRole("radio", { name: /theirs: A\. Tern/ }).check();
    await both.getByRole("radio", { name: /yours: B\. Wren/ }).check();
    await both.getByRole("button", { name: "Keep what is chosen" }).click();
    await allStored(second);
    const stored = await load(`/api/documents/car/${car}`);
    expect(stored.document).toMatchObject({ owner: "B. Wren", year: 2014 });
    const { versions } = (await load(`/api/documents/car/${car}/versions`)) as never as {
      readonly versions: readonly { readonly document: { readonly owner: string | null } }[];
    };
    expect(versions.map((one) => one.document.owner)).toContain("A. Tern");
  });
});
