import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, Page } from "playwright-core";
import { expect } from "vitest";
import { openSession, type Screen } from "../browser-setup/launch.ts";
import { findByAxe } from "./axe.ts";
import { listenForComplaints, openSheet, settle } from "./open-sheet.ts";
import { overlapping, pressable, small } from "./thumb.ts";

/** Where the pictures of the sheets are put. */
export const PICTURES = fileURLToPath(new URL("../../test-results/sheets", import.meta.url));

const THEMES = ["light", "dark"] as const;

/**
 * Ways a sheet is opened. Desk and lying tablet show the same elements in the same colours, so one opening is made
 * narrower for the second's pictures; an upright tablet is touched and is opened anew.
 */
export const SCREENS: readonly { readonly screen: string; readonly sizes: readonly Screen[] }[] = [
  {
    screen: "desk and lying tablet",
    sizes: [
      { width: 1440, height: 900 },
      { width: 1024, height: 768 },
    ],
  },
  { screen: "upright tablet", sizes: [{ width: 820, height: 1180, touch: true }] },
];

/** A sheet to look at. */
export interface Sheet {
  readonly name: string;
  readonly path: string;
  /** Parts whose things to press are measured on the upright tablet. */
  readonly pressed?: readonly string[];
  /** The browser itself reports the answer that something is not there. */
  readonly refused?: boolean;
}

const lookAt = async (page: Page, name: string, { width, height }: Screen, axe: boolean): Promise<void> => {
  for (const [turn, theme] of THEMES.entries()) {
    await page.emulateMedia({ colorScheme: theme });
    await settle(page);
    await page.screenshot({ path: join(PICTURES, `${name}-${width}x${height}-${theme}.png`) });
    if (axe) expect.soft(await findByAxe(page, turn === 0 ? "all" : "contrast"), theme).toEqual([]);
  }
  const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  expect.soft(overflow, `wider than ${width} px`).toBeLessThanOrEqual(0);
};

/** Takes a sheet's pictures in both themes and demands: nothing for axe, no complaint, nothing wider than the screen, thumbs. */
export const lookAtSheet = async (browser: Browser, sheet: Sheet, sizes: readonly Screen[]): Promise<void> => {
  mkdirSync(PICTURES, { recursive: true });
  const [first, ...others] = sizes;
  if (first === undefined) throw new Error("a sheet is looked at in one size at least");
  const session = await openSession(browser, first);
  const page = await session.newPage();
  const complaints = listenForComplaints(page);
  await openSheet(page, sheet.path);
  await lookAt(page, sheet.name, first, true);
  for (const part of first.touch === true ? (sheet.pressed ?? []) : []) {
    const boxes = await pressable(page, part);
    expect.soft(overlapping(boxes), part).toEqual([]);
    expect.soft(small(boxes), part).toEqual([]);
  }
  for (const size of others) {
    await page.setViewportSize({ width: size.width, height: size.height });
    await lookAt(page, sheet.name, size, false);
  }
  expect(sheet.refused === true ? [] : complaints).toEqual([]);
  await session.close();
};
