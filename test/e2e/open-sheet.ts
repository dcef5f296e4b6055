import type { Page } from "playwright-core";
import { inject } from "vitest";
import { openPage } from "../browser-setup/fresh-page.ts";
import { desk } from "../browser-setup/launch.ts";

/** Complaints a page makes in the console or by breaking. */
export const listenForComplaints = (page: Page): readonly string[] => {
  const complaints: string[] = [];
  page.on("pageerror", (problem) => complaints.push(problem.message));
  page.on("console", (message) => {
    if (message.type() === "error" || message.type() === "warning") complaints.push(message.text());
  });
  return complaints;
};

/** Opens a sheet and waits until it stands: loaded, its type in place, and nothing more being computed. */
export const openSheet = async (page: Page, path: string): Promise<void> => {
  await page.goto(`${inject("address")}${path}`, { waitUntil: "load" });
  await settle(page);
};

/** Opens a sheet at a desk, in a session without stored data. */
export const openAtDesk = async (path: string): Promise<Page> => {
  const page = await openPage(desk);
  await openSheet(page, path);
  return page;
};

/** Waits until nothing is being computed and two frames have been drawn since. */
export const settle = async (page: Page): Promise<void> => {
  await page.locator("h1").waitFor();
  await page.waitForFunction(
    () => document.querySelector("[data-busy='true']") === null && document.fonts.status === "loaded",
  );
  await page.evaluate(() => new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn))));
};
