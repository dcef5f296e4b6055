import { describe, expect, it } from "vitest";
import { findByAxe } from "./axe.ts";
import { describeSheets } from "./describe-sheets.ts";
import { openAtDesk } from "./open-sheet.ts";
import { GEOMETRY_SHEETS } from "./sheets.ts";

describeSheets("of the geometry", GEOMETRY_SHEETS);

describe("what opens on the geometry", () => {
  it("leaves axe nothing in the list of keys and in an opened figure", async () => {
    const page = await openAtDesk(GEOMETRY_SHEETS.find(({ name }) => name === "geometry")?.path ?? "/");
    await page.getByText("All inputs").click();
    expect.soft(await findByAxe(page)).toEqual([]);
    await page.keyboard.press("?");
    await page.getByRole("dialog").waitFor();
    expect(await findByAxe(page)).toEqual([]);
  });
});
