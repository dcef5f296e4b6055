import { describe, expect, it } from "vitest";
import { openPage } from "../browser-setup/fresh-page.ts";
import { desk } from "../browser-setup/launch.ts";
import { allStored } from "./entries.ts";
import { openSheet, settle } from "./open-sheet.ts";
import { ask, putCarAndVisit } from "./recorded-visit.ts";

const PLACE = "rear-left/trailing-link/inner-bush";
/** One white dot. */
const DOT = Buffer.from(
  "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mP8/5+hHgAHggJ/PchI7wAAAABJRU5ErkJggg==",
  "base64",
);

interface Stored {
  readonly looks: readonly { readonly place: string; readonly content: { readonly kind: string } }[];
}

describe("a photo or note added to a place", () => {
  it("records no sign again, and stands in Findings at its place", async () => {
    const visit = "photo-once";
    await putCarAndVisit(visit, "ouzel-saloon");
    const page = await openPage(desk);
    await openSheet(page, `/cases/${visit}/underside/rear-left?at=${PLACE}`);
    await page.getByRole("button", { name: "Web torn" }).click();
    await page.getByLabel("Add a photo").setInputFiles({ name: "torn.png", mimeType: "image/png", buffer: DOT });
    await page.locator(".photo-entry img.photo").waitFor();
    await allStored(page);
    const { looks } = (await ask(`/api/cars/${visit}`)) as Stored;
    expect(looks.filter((l) => l.place === PLACE).map((l) => l.content.kind)).toEqual(["signs", "not-taken"]);
    expect(await page.locator(".place-records li", { hasText: /^web torn/i }).count()).toBe(1);

    await openSheet(page, `/cases/${visit}/findings?at=${PLACE}`);
    await page.locator(".margin img.photo").waitFor();
    await settle(page);
    expect(await page.locator(".margin img.photo").count()).toBe(1);
    expect(await page.locator(".found-row").count()).toBe(1);
  });
});
