import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { openPage } from "../browser-setup/fresh-page.ts";
import { tablet } from "../browser-setup/launch.ts";
import { openSheet } from "./open-sheet.ts";
import { type Box, overlapping, small } from "./thumb.ts";

const boxesOf = (page: Page, selector: string): Promise<readonly Box[]> =>
  page.locator(selector).evaluateAll((elements) =>
    elements
      .filter((element) => element.checkVisibility())
      .map((element) => {
        const { x, y, width, height } = element.getBoundingClientRect();
        return { name: element.getAttribute("aria-label") ?? element.textContent ?? "", x, y, width, height };
      }),
  );

const FAMILIES = ["ouzel-saloon", "dunlin-hatch", "siskin-coupe"];
const PLACES = ["", "/front-left", "/front-right", "/rear-left", "/rear-right", "/front", "/rear"];

describe("on an upright tablet", () => {
  it.each(FAMILIES)("no two places of %s overlap and each is as large as a thumb", async (family) => {
    const page = await openPage(tablet);
    for (const place of PLACES) {
      await openSheet(page, `/families/${family}/underside${place}`);
      const boxes = await boxesOf(page, ".target");
      expect.soft(boxes.length, `${family}${place}`).toBeGreaterThan(4);
      expect.soft(overlapping(boxes), `${family}${place}`).toEqual([]);
      expect.soft(small(boxes), `${family}${place}`).toEqual([]);
    }
  });

  it("no two things to press in the margin or the head overlap, and each is as large as a thumb", async () => {
    const page = await openPage(tablet);
    const place = "rear-left/trailing-link/inner-bush";
    await openSheet(page, `/families/ouzel-saloon/underside/rear-left?marks=${place}:torn-3&at=${place}`);
    for (const part of [".head", ".margin", ".opened-head"]) {
      const boxes = await boxesOf(page, `${part} :is(a, button, input, select, summary)`);
      expect.soft(overlapping(boxes), part).toEqual([]);
      expect.soft(small(boxes), part).toEqual([]);
    }
  });
});
