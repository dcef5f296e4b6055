import type { Page } from "playwright-core";
import { expect } from "vitest";

/** What has the focus, and how wide it is outlined, px. */
export interface Focused {
  readonly name: string;
  readonly outline: number;
}

/** What has the focus on a page, or null. */
export const focused = (page: Page): Promise<Focused | null> =>
  page.evaluate(() => {
    const element = document.activeElement;
    if (element === null || element === document.body) return null;
    const own = Number.parseFloat(getComputedStyle(element).outlineWidth);
    const label = element.closest("label");
    const outer = label === null ? 0 : Number.parseFloat(getComputedStyle(label).outlineWidth);
    const shown = (node: Element, width: number) => (getComputedStyle(node).outlineStyle === "none" ? 0 : width);
    return {
      name: element.getAttribute("aria-label") ?? element.textContent ?? element.tagName,
      outline: Math.max(shown(element, own), label === null ? 0 : shown(label, outer)),
    };
  });

/** More stops than any sheet has, Today with the cars of all tests among them. */
const MOST_STOPS = 240;

/** Goes through a sheet by Tab and demands that every stop shows where the focus is, and that there is an end. */
export const tabThrough = async (page: Page): Promise<void> => {
  const dim: string[] = [];
  let stops = 0;
  for (; stops < MOST_STOPS; stops++) {
    await page.keyboard.press("Tab");
    const at = await focused(page);
    if (at === null) break;
    if (at.outline < 2) dim.push(at.name);
  }
  expect.soft(stops).toBeGreaterThan(6);
  expect.soft(stops).toBeLessThan(MOST_STOPS);
  expect.soft(dim).toEqual([]);
};
