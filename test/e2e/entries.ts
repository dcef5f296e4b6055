import type { Locator, Page } from "playwright-core";
import { settle } from "./open-sheet.ts";

/** Counts what a person does: one field filled or one tap is one entry. */
export class Entries {
  count = 0;
  readonly page: Page;
  constructor(page: Page) {
    this.page = page;
  }
  async tap(thing: Locator): Promise<void> {
    await thing.click();
    this.count += 1;
    await settle(this.page);
  }
  async fill(field: Locator, value: string): Promise<void> {
    await field.fill(value);
    this.count += 1;
  }
}

/** Waits until nothing is kept in the browser that the workshop's store has not acknowledged. */
export const allStored = (page: Page): Promise<unknown> =>
  page.waitForFunction(() => !Object.keys(localStorage).some((key) => key.startsWith("underbench.unsent.")));

/** Keys of what waits in the browser for the workshop's store. */
export const unsentKeys = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => Object.keys(localStorage).filter((key) => key.startsWith("underbench.unsent.")));
