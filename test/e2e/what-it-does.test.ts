import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { openPage } from "../browser-setup/fresh-page.ts";
import { desk, type Screen, tablet } from "../browser-setup/launch.ts";
import { openAtDesk, openSheet, settle } from "./open-sheet.ts";
import { FAMILY, TORN_BUSH } from "./sheets.ts";

const UNDERSIDE = `/families/${FAMILY}/underside`;
const GEOMETRY = `/families/${FAMILY}/geometry`;
const STEERED_BUSH = "front-left/lower-arm/rear-bush";
const screens: readonly Screen[] = [desk, { width: 1024, height: 768 }, tablet];

const marginOf = async (page: Page): Promise<string> => (await page.locator(".margin-body").textContent()) ?? "";

/** True where every line of the first element with these words can be seen without scrolling anything. */
const isSeen = (page: Page, words: string): Promise<boolean> =>
  page.evaluate((said) => {
    const holders = [...document.querySelectorAll("p, .margin-text, svg")].filter((one) =>
      (one.textContent ?? "").replaceAll(/\s/g, "").includes(said.replaceAll(" ", "")),
    );
    const shown = (x: number, y: number, holder: Element): boolean => {
      const top = document.elementFromPoint(x, y);
      return top !== null && (holder.contains(top) || top.contains(holder));
    };
    return holders.some((holder) => {
      const texts = holder instanceof SVGElement ? [...holder.querySelectorAll("text")] : [holder];
      const own = texts.filter((text) => text === holder || said.includes((text.textContent ?? "?").trim()));
      return (
        own.length > 0 &&
        own.every((text) => {
          const { left, top, bottom, width } = text.getBoundingClientRect();
          return width > 0 && shown(left + 4, top + 4, holder) && shown(left + 4, bottom - 4, holder);
        })
      );
    });
  }, words);

describe("what a fault does", () => {
  it.each(screens)(
    "is read without scrolling at $width x $height, on the Underside and in Geometry",
    async (screen) => {
      const page = await openPage(screen);
      await openSheet(page, `${UNDERSIDE}/rear-left?marks=${TORN_BUSH}:torn-3&at=${TORN_BUSH}`);
      const sentence = (await page.locator(".what-it-does .margin-text").textContent()) ?? "";
      expect(sentence).toMatch(/^Under 2\.0 kN of braking .* further\./);
      expect(await isSeen(page, sentence)).toBe(true);
      await openSheet(page, `${GEOMETRY}?marks=${TORN_BUSH}:torn-3&at=${TORN_BUSH}`);
      expect(await isSeen(page, sentence)).toBe(true);
    },
  );

  it.each(["abc", "12", "-1"])("is not said of an entry that is refused: %s", async (typed) => {
    const page = await openAtDesk(`${UNDERSIDE}/rear-left?marks=${TORN_BUSH}:loose-2&at=${TORN_BUSH}`);
    const before = await marginOf(page);
    expect(before).toContain("Under 2.0 kN of braking at this wheel the loose bush");
    await page.getByLabel("Play, end to end").fill(typed);
    await settle(page);
    const after = await marginOf(page);
    expect(after).toContain(`“${typed}” was typed`);
    expect(after).toContain("Nothing is said of it yet");
    expect(after).not.toContain("Under 2.0 kN of braking at this wheel the loose bush");
    expect(after).not.toContain("Print the sheet");
    await page.getByLabel("Play, end to end").fill("3");
    await page.keyboard.press("Enter");
    await settle(page);
    expect(page.url()).toContain("loose-3");
    expect(await marginOf(page)).toContain("Under 2.0 kN of braking at this wheel the loose bush");
  });

  it("says that the play of a loose joint is assumed until somebody types it, be it the same", async () => {
    const page = await openAtDesk(`${UNDERSIDE}/rear-left?at=${TORN_BUSH}`);
    await page.getByRole("button", { name: /^Loose/ }).click();
    await settle(page);
    expect(await marginOf(page)).toContain("The play of 1.0 mm is assumed");
    await page.getByLabel("Play, end to end").click();
    await page.keyboard.press("Tab");
    await settle(page);
    expect(page.url()).not.toContain("loose-1");
    await page.getByLabel("Play, end to end").click();
    await page.keyboard.type("1");
    await page.keyboard.press("Enter");
    await settle(page);
    expect(page.url()).toContain("loose-1");
    expect(await marginOf(page)).not.toContain("assumed");
  });

  it("says which force came and which can be asked for, and leads back", async () => {
    const page = await openAtDesk(`${GEOMETRY}?marks=${TORN_BUSH}:torn-3&at=${TORN_BUSH}&braking_n=99999`);
    const said = (await page.locator("main").textContent()) ?? "";
    expect(said).toContain("99999 N");
    expect(said).toContain("20000 N");
    await page
      .locator("main")
      .getByRole("link", { name: /^Back to 2 kN/ })
      .click();
    await settle(page);
    expect(page.url()).not.toContain("99999");
    expect(await page.locator(".figure-huge").textContent()).toMatch(/\d/);
    await openSheet(page, `${UNDERSIDE}/rear-left?marks=${TORN_BUSH}:torn-3&at=${TORN_BUSH}&braking_n=99999`);
    await page.getByRole("link", { name: /^Back to 2 kN/ }).click();
    await settle(page);
    expect(await marginOf(page)).toContain("Under 2.0 kN of braking");
  });

  it("opens to every point and rate with its deviation and origin, and to its sources by name", async () => {
    const page = await openAtDesk(`${GEOMETRY}?marks=${TORN_BUSH}:torn-3&at=${TORN_BUSH}`);
    await page.getByText("All inputs").click();
    const facts = page.locator(".opens .figure-facts");
    const said = (await facts.textContent()) ?? "";
    expect(said).toContain("x −2272, y 590.5, z 286.5 mm");
    expect(said).toMatch(
      /Trailing link, inner jointacross \d+ N\/mm, along \d+ N\/mm; axis [^s]*standard deviation \d+ %; /,
    );
    expect(said).not.toContain("docs/");
    await facts.getByRole("link", { name: "linkage-reference" }).click();
    await settle(page);
    expect(page.url()).toContain("/reference?source=linkage-reference");
  });

  it("tells which way the car turns with the rack, and lists the keys of the sliders", async () => {
    const page = await openAtDesk(`${GEOMETRY}?marks=${STEERED_BUSH}:torn-3&at=${STEERED_BUSH}&rack_mm=40`);
    const rack = page.getByRole("slider", { name: "Rack" });
    const turns = /turns (left|right)/.exec((await rack.getAttribute("aria-valuetext")) ?? "")?.[1];
    const toe = (await page.locator(".state-line").last().textContent()) ?? "";
    // A left wheel that turns out points left.
    expect(turns).toBe(toe.includes("out") ? "left" : "right");
    await page.getByRole("button", { name: "Keys of this page" }).click();
    expect(await page.locator("dialog").textContent()).toContain("on a slider: one step");
  });
});
