import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Page } from "playwright-core";
import { expect } from "vitest";
import { openPage } from "../browser-setup/fresh-page.ts";
import { desk, type Screen } from "../browser-setup/launch.ts";
import { findByAxe } from "./axe.ts";
import { listenForComplaints, openSheet, settle } from "./open-sheet.ts";
import { overlapping, pressable, small } from "./thumb.ts";

/** Where the pictures of the sheets are put. */
export const PICTURES = fileURLToPath(new URL("../../test-results/sheets", import.meta.url));

/**
 * Screens a sheet is looked at on, in this order: opened on the tablet that is touched, then made wider, since one opening
 * takes as long as all that is asked of it.
 */
const UPRIGHT: Screen = { width: 820, height: 1180, touch: true };
const OTHERS: readonly Screen[] = [{ width: 1024, height: 768 }, desk];

/** A sheet to look at. */
export interface Sheet {
  readonly name: string;
  readonly path: string;
  /** Parts whose things to press are measured on the upright tablet. */
  readonly pressed?: readonly string[];
  /** The browser itself reports the answer that something is not there. */
  readonly refused?: boolean;
}

type Theme = "light" | "dark";

const takePicture = async (page: Page, name: string, { width, height }: Screen, theme: Theme): Promise<void> => {
  await page.emulateMedia({ colorScheme: theme });
  await settle(page);
  await page.screenshot({ path: join(PICTURES, `${name}-${width}x${height}-${theme}.png`) });
};

const demandNothingWider = async (page: Page, { width }: Screen): Promise<void> => {
  const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  expect.soft(overflow, `wider than ${width} px`).toBeLessThanOrEqual(0);
};

/** Makes the screen one that is touched, or not. */
const setTouch = async (page: Page, enabled: boolean): Promise<void> => {
  const client = await page.context().newCDPSession(page);
  await client.send("Emulation.setTouchEmulationEnabled", { enabled });
  await client.detach();
};

/**
 * Opens a sheet, takes its pictures in all sizes and both themes and demands: nothing for axe on the upright tablet in
 * light and at the desk in dark, no complaint, nothing wider than the screen, room for thumbs. `also` is asked of the
 * sheet at the desk in the end.
 */
export const lookAtSheet = async (sheet: Sheet, also?: (page: Page) => Promise<void>): Promise<void> => {
  mkdirSync(PICTURES, { recursive: true });
  const page = await openPage({ ...UPRIGHT, touch: false });
  await setTouch(page, true);
  const complaints = listenForComplaints(page);
  await openSheet(page, sheet.path);
  await takePicture(page, sheet.name, UPRIGHT, "light");
  expect.soft(await findByAxe(page), "light").toEqual([]);
  for (const part of sheet.pressed ?? []) {
    const boxes = await pressable(page, part);
    expect.soft(overlapping(boxes), part).toEqual([]);
    expect.soft(small(boxes), part).toEqual([]);
  }
  await takePicture(page, sheet.name, UPRIGHT, "dark");
  await demandNothingWider(page, UPRIGHT);
  await setTouch(page, false);
  for (const size of OTHERS) {
    await page.setViewportSize({ width: size.width, height: size.height });
    await takePicture(page, sheet.name, size, "light");
    await takePicture(page, sheet.name, size, "dark");
    await demandNothingWider(page, size);
  }
  expect.soft(await findByAxe(page), "dark").toEqual([]);
  await also?.(page);
  expect(sheet.refused === true ? [] : complaints).toEqual([]);
};
