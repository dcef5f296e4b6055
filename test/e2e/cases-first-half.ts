import { allStored, type Entries } from "./entries.ts";
import { openSheet } from "./open-sheet.ts";

/** What the owner of an invented car says. */
export const OWNERS_WORDS = "it pulls to the left when I brake, and something clunks at the rear";
export const WORN_PLACE = "rear-left/trailing-link/inner-bush";

/**
 * An unknown car from its owner's words to what was seen under it: no car line on file, no hard points, no readings.
 * Ends on the page of Findings; the address of the visit is that of the page.
 */
export const walkToFindings = async (entries: Entries): Promise<void> => {
  const { page } = entries;
  await openSheet(page, "/");
  await entries.fill(page.getByLabel("Plate, name, or what the owner says"), OWNERS_WORDS);
  await entries.tap(page.getByRole("button", { name: "Take in a car" }));
  await page.waitForURL(/\/enquiry$/);
  await entries.tap(page.getByRole("button", { name: "Pulls under braking", exact: true }));
  await entries.tap(page.getByRole("button", { name: "Front left" }));
  await entries.tap(page.getByRole("group", { name: "Braking" }).getByRole("button", { name: "firmly" }));
  await entries.tap(page.getByRole("button", { name: "Done, on to Car" }));
  await entries.fill(page.getByLabel("Odometer", { exact: true }), "128440");
  await entries.tap(page.getByRole("link", { name: "Begin from its silhouette" }));
  await entries.tap(page.getByRole("group", { name: "Front axle" }).getByLabel("double wishbone"));
  await entries.tap(page.getByRole("group", { name: "Rear axle" }).getByLabel("five-link"));
  await entries.tap(page.getByRole("button", { name: "Make this car line" }));
  await page.waitForURL(/\/car$/);
  await entries.tap(page.getByRole("button", { name: "Done, on to Readings" }));
  await entries.tap(page.getByRole("button", { name: /^Rest of the readings not taken/ }));
  await entries.tap(page.getByRole("button", { name: "Done, on to Underside" }));
  await entries.tap(page.getByRole("button", { name: /^Rear left,/ }).first());
  await entries.tap(page.getByRole("button", { name: /^Rear left, trailing link, front bush/ }));
  await entries.tap(page.getByRole("button", { name: "Web torn" }));
  await entries.tap(page.getByRole("button", { name: "Close this place" }));
  await entries.tap(page.getByRole("button", { name: /^Rest of the rear left looked at, nothing seen/ }));
  await entries.tap(page.getByRole("button", { name: "Done, on to Findings" }));
  await page.waitForURL(/\/findings/);
  await allStored(page);
};
