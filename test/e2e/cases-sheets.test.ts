import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { openPage } from "../browser-setup/fresh-page.ts";
import { tablet } from "../browser-setup/launch.ts";
import { findByAxe } from "./axe.ts";
import { walkToFindings } from "./cases-first-half.ts";
import { Entries } from "./entries.ts";
import { lookAtSheet, PICTURES } from "./look-at-sheet.ts";
import { openSheet } from "./open-sheet.ts";
import { overlapping, pressable, small } from "./thumb.ts";

/** Pages of a case by the name of their pictures; the last part of their address. */
const PAGES = [
  { name: "case-enquiry", path: "enquiry" },
  { name: "case-car", path: "car" },
  { name: "case-readings", path: "readings" },
  { name: "case-underside", path: "underside" },
  { name: "case-corner", path: "underside/rear-left" },
  { name: "case-corner-selected", path: "underside/rear-left?at=rear-left/trailing-link/inner-bush" },
  { name: "case-corner-reading", path: "underside/front-left?at=front-left/disc/thickness" },
  { name: "case-axle", path: "underside/front" },
] as const;

describe("the sheets of a case", () => {
  let visit: string;
  beforeAll(async () => {
    const page = await openPage(tablet);
    await walkToFindings(new Entries(page));
    visit = page.url().replace(/^.*(\/cases\/[^/]+)\/.*$/, "$1");
  });

  it.each(PAGES)(
    "$name: its pictures in every size and both themes, nothing for axe to find, no complaint",
    ({ name, path }) => lookAtSheet({ name, path: `${visit}/${path}`, pressed: [".head", ".drawing", ".margin"] }),
  );

  it("the number pad types into the field under the thumb and goes on to the next", async () => {
    const page = await openPage(tablet);
    await openSheet(page, `${visit}/readings`);
    const field = page.getByLabel("Front left, tread, inner, mm", { exact: true });
    await field.tap();
    for (const key of ["4", "point", "6"]) await page.getByRole("button", { name: key, exact: true }).tap();
    expect(await field.inputValue()).toBe("4.6");
    const boxes = await pressable(page, ".margin");
    expect.soft(overlapping(boxes)).toEqual([]);
    expect.soft(small(boxes)).toEqual([]);
    expect.soft(await findByAxe(page)).toEqual([]);
    await page.screenshot({ path: join(PICTURES, "case-number-pad-820x1180-light.png") });
    await page.getByRole("button", { name: "Record, next" }).tap();
    const focused = await page.evaluate(() => document.activeElement?.getAttribute("aria-label"));
    expect(focused).toBe("Front left, tread, middle, mm");
  });
});
