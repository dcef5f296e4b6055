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

/** Keys pressed before the page is asked what they did: each question costs as much as several keys. */
const AT_ONCE = 12;

/** What a walk by Tab came past, and whether it came to the end of the sheet. */
interface Walk {
  readonly stops: number;
  readonly dim: readonly string[];
  readonly ended: boolean;
}

/** Has the page itself note each stop: the sheet ends where the focus leaves it or comes to the first stop again. */
const noteStops = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const seen: Element[] = [];
    const dim: string[] = [];
    let ended = false;
    const shown = (node: Element): number => {
      const { outlineStyle, outlineWidth } = getComputedStyle(node);
      return outlineStyle === "none" ? 0 : Number.parseFloat(outlineWidth);
    };
    document.addEventListener("focusin", ({ target }) => {
      if (ended || !(target instanceof Element)) return;
      if (target === seen[0]) ended = true;
      else seen.push(target);
      const label = target.closest("label");
      const outline = Math.max(shown(target), label === null ? 0 : shown(label));
      if (outline < 2) dim.push(target.getAttribute("aria-label") ?? target.textContent ?? target.tagName);
    });
    document.addEventListener("focusout", ({ relatedTarget }) => {
      if (relatedTarget === null) ended = true;
    });
    Object.assign(window, { walkByTab: () => ({ stops: seen.length, dim, ended }) });
  });

/** Goes through a sheet by Tab and demands that every stop shows where the focus is, and that there is an end. */
export const tabThrough = async (page: Page): Promise<void> => {
  await noteStops(page);
  let walk: Walk = { stops: 0, dim: [], ended: false };
  while (!walk.ended && walk.stops < MOST_STOPS) {
    for (let pressed = 0; pressed < AT_ONCE; pressed++) await page.keyboard.press("Tab");
    walk = await page.evaluate<Walk>("window.walkByTab()");
  }
  expect.soft(walk.stops).toBeGreaterThan(6);
  expect.soft(walk.stops).toBeLessThan(MOST_STOPS);
  expect.soft(walk.dim).toEqual([]);
};
