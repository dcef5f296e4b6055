import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { drawCorner } from "#drawing";
import { openPage } from "../browser-setup/fresh-page.ts";
import { tablet } from "../browser-setup/launch.ts";
import { sampleSaloon } from "../samples/sample-owners-page.ts";
import { openSheet, settle } from "./open-sheet.ts";

const CORNER = "rear-left";
const UNDERSIDE = "/families/ouzel-saloon/underside";
/** Bushes that lie free on the drawing. */
const BUSHES = ["trailing-link/inner-bush", "toe-link/inner-bush", "spring-link/inner-bush"].map(
  (at) => `${CORNER}/${at}`,
);

/** Where the drawn places of the corner lie on the page: the scene is drawn for the room it has. */
const drawnPlaces = async (page: Page) => {
  const box = await page.locator(".scene").boundingBox();
  if (box === null) throw new Error("no drawing");
  const { width, height, x, y } = box;
  const scene = drawCorner(sampleSaloon(), CORNER, { width, height, type: "touch", states: {} });
  return new Map((scene.points ?? []).map((point) => [point.id, { x: x + point.x, y: y + point.y }]));
};

describe("the drawing of the car on an upright tablet", () => {
  it("selects a bush where it is drawn, not only by its row", async () => {
    const page = await openPage(tablet);
    for (const id of BUSHES) {
      // A chosen place draws the margin up over the lower half of the drawing: each is tried on the sheet as it opens.
      await openSheet(page, `${UNDERSIDE}/${CORNER}`);
      const at = (await drawnPlaces(page)).get(id);
      if (at === undefined) throw new Error(`${id} is not drawn`);
      await page.touchscreen.tap(at.x, at.y);
      await settle(page);
      expect(new URL(page.url()).searchParams.get("at")).toBe(id);
    }
  });

  it.each(["front-left", "front-right", "rear-left", "rear-right"])("opens the %s corner", async (corner) => {
    const page = await openPage(tablet);
    await openSheet(page, UNDERSIDE);
    const target = await page.locator(`[data-target="corner/${corner}"]`).boundingBox();
    if (target === null) throw new Error("no corner");
    await page.touchscreen.tap(target.x + target.width / 2, target.y + target.height / 2);
    await settle(page);
    expect(new URL(page.url()).pathname).toBe(`${UNDERSIDE}/${corner}`);
  });
});
