import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import {
  computeBodies,
  computeCar,
  computeHandTest,
  computeHold,
  computeTravelSheet,
  formatNumber,
  formatTravelCsv,
  type TravelSheet,
  type TravelSheetQuestion,
} from "#casework";
import { parseBodiesFile, parseFamily } from "#contract";
import { demoFamilySheets } from "#demo";
import { findByAxe } from "./axe.ts";
import { enterHardness } from "./enter-hardness.ts";
import { openAtDesk, settle } from "./open-sheet.ts";

const readFamily = (id: string) => {
  const parsed = parseFamily(structuredClone(demoFamilySheets[id]));
  if ("findings" in parsed) throw new Error(JSON.stringify(parsed.findings));
  return parsed.family;
};

const question: TravelSheetQuestion = {
  family: readFamily("ouzel-saloon"),
  corner: "front-left",
  condition: { contactRise: 0, rack: 0, braking: 0, lateral: 0, drive: 0 },
  subjects: [{ kind: "sound" }, { kind: "beside", family: readFamily("dunlin-hatch") }],
  figures: ["toe", "caster"],
};

const computed = (): TravelSheet => {
  const answer = computeTravelSheet(question);
  if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
  return answer.sheet;
};

describe("over travel", () => {
  it("compares two car lines, and page, file and calculation say the same", async () => {
    const page = await openAtDesk("/families/ouzel-saloon/travel");
    await page.getByLabel("Beside").selectOption("dunlin-hatch");
    await page.getByLabel("Second").selectOption("caster");
    await page.getByRole("heading", { name: "Which moves more" }).waitFor();
    await settle(page);
    const sheet = computed();
    for (const sentence of sheet.verdicts)
      expect(await page.getByText(sentence, { exact: true }).count(), sentence).toBe(1);
    const table = page.getByRole("table", { name: "Ouzel saloon" });
    for (const key of ["toe", "camber"] as const) {
      const row = table.getByRole("row").filter({ has: page.getByRole("rowheader", { name: key }) });
      for (const { value, sure } of sheet.rows[0]?.[key] ?? [])
        expect(await row.textContent()).toContain(sure ? `${formatNumber(Math.abs(value), 2)}°` : "sign not sure");
    }
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("link", { name: "Lines as CSV" }).click(),
    ]);
    expect(download.suggestedFilename()).toBe("ouzel-saloon-front-left-travel.csv");
    expect(readFileSync(await download.path(), "utf8")).toBe(formatTravelCsv(sheet, question));
    const [printed] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Print the sheet" }).click(),
    ]);
    expect(printed.suggestedFilename()).toBe("ouzel-saloon-front-left-travel.pdf");
    await page.getByLabel("Firmer", { exact: true }).selectOption("every-rubber");
    await page.getByLabel("Firmer by").fill("3");
    await page.getByLabel("Firmer by").press("Enter");
    await page.getByRole("table", { name: "every rubber firmer, 3 times" }).waitFor();
    await page.getByRole("button", { name: "By its hardness" }).click();
    await page.getByText("the hardness of the old part, 20 to 80 Shore A").first().waitFor();
    await enterHardness(page, "55", "65");
    await page.getByRole("table", { name: "every rubber firmer, 55 to 65 Shore A" }).waitFor();
    expect(await findByAxe(page)).toEqual([]);
    await page.reload();
    await settle(page);
    expect(await page.getByLabel("Beside").inputValue()).toBe("dunlin-hatch");
    expect(await page.getByLabel("New part").inputValue()).toBe("65");
    expect(await page.locator(".margin").textContent()).toContain(
      "55 to 65 Shore A makes 1.49 times the sound rate, 1.07 to 2.08 (95 %)",
    );
  });

  it("moves the whole car by keyboard, and keeps the motion in the address", async () => {
    const page = await openAtDesk("/families/ouzel-saloon/car");
    const answer = computeCar({
      family: readFamily("ouzel-saloon"),
      motion: { kind: "roll", by: (2.5 * Math.PI) / 180 },
    });
    if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
    await page.getByLabel("lean of the body").focus();
    await page.keyboard.press("ArrowRight");
    await page.waitForURL(/by=2\.5/);
    await page.getByText(answer.car.sentence, { exact: true }).first().waitFor();
    expect(await findByAxe(page)).toEqual([]);
    await page.getByLabel("Moved").selectOption("rack");
    await page
      .getByText(/^With the rack 40 mm to the left the inner wheel turns /)
      .first()
      .waitFor();
    await page.goBack();
    await page.getByText(answer.car.sentence, { exact: true }).first().waitFor();
    await page.getByLabel("Moved").selectOption("bend");
    await page.getByLabel("Joint").selectOption("rear-right/trailing-link/inner-bush");
    await page.getByLabel("As").selectOption("loose");
    await page.getByLabel("Play").fill("2");
    await page.getByLabel("Play").press("Enter");
    await page.waitForURL(/as=loose-2/);
    await page.reload();
    await page
      .getByText(/front bush of the trailing link \(loose, 2\.0 mm\) the rear right wheel turns a? ?further/)
      .first()
      .waitFor();
    expect(await page.getByLabel("Play").inputValue()).toBe("2");
    expect(await page.getByRole("table").getByRole("row").count()).toBe(6);
    expect(await findByAxe(page)).toEqual([]);
  });

  it("says how to hold a corner, and prints it", async () => {
    const page = await openAtDesk("/families/ouzel-saloon/hold?corner=rear-left");
    const family = readFamily("ouzel-saloon");
    const answer = computeHold(family, "rear-left");
    if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
    await page.getByText(answer.hold.sentence).first().waitFor();
    await page
      .getByRole("button", { name: /^Trailing link, front bush, under the spring link: .*best way$/ })
      .press("Enter");
    await page.waitForURL(/at=rear-left/);
    // A rock does not tell it for sure; the page says what does, and that is one press away.
    await page.getByRole("heading", { name: "By hand: too close to call" }).waitFor();
    const telling = page.locator(".telling-ways li");
    await telling.first().waitFor();
    expect(await telling.allTextContents()).toEqual([expect.stringMatching(/^bar at the joint.* mm further, /)]);
    await telling.getByRole("button", { name: "bar at the joint" }).click();
    await page.getByRole("heading", { name: "By hand: a person tells it" }).waitFor();
    expect(await telling.count()).toBe(0);
    await settle(page);
    const held = { kind: "under", part: "spring-link" } as const;
    const position = "rear-left/trailing-link/inner-bush";
    const question = {
      corner: "rear-left",
      held,
      position,
      fault: { kind: "torn", grade: 3 },
      way: { kind: "bar", force: 500 },
    } as const;
    const hand = computeHandTest(family, question);
    if ("findings" in hand) throw new Error(JSON.stringify(hand.findings));
    await page.getByText(hand.test.sentence, { exact: true }).waitFor();
    expect(await findByAxe(page)).toEqual([]);
    await page.getByLabel("Force of the bar").focus();
    await page.keyboard.press("Home");
    await page.getByRole("heading", { name: "By hand: no person tells it" }).waitFor();
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Print the sheet" }).click(),
    ]);
    expect(download.suggestedFilename()).toBe("ouzel-saloon-rear-left-hold.pdf");
    await page.reload();
    await page.getByRole("heading", { name: "By hand: no person tells it" }).waitFor();
    expect(await page.getByLabel("Force of the bar").inputValue()).toBe("10");
  });

  it("matches a corner to readings in any unit and takes the points over into a copy", async () => {
    const page = await openAtDesk("/families/dunlin-hatch/match?corner=rear-left");
    const rows = [
      ["as it stands", "640", "-1°21'", "0.15"],
      ["height 2", "24.0158 in", "−1,817", "0.264"],
      ["height 3", "670 mm", "-0.94", "0.001°"],
    ];
    for (const [row = "", height = "", camber = "", toe = ""] of rows) {
      await page.getByLabel(`hub centre to arch, ${row}, mm`).fill(height);
      await page.getByLabel(`camber, ${row}, °`).fill(camber);
      await page.getByLabel(`toe of this wheel, in is +, ${row}, °`).fill(toe);
    }
    await page.getByText(/^Matched to 3 heights, /).waitFor();
    await settle(page);
    const said = await page
      .getByText(/^Matched to 3 heights, /)
      .first()
      .textContent();
    expect(await findByAxe(page)).toEqual([]);
    await page.reload();
    await page
      .getByText(said ?? "", { exact: true })
      .first()
      .waitFor();
    expect(await page.getByLabel("hub centre to arch, height 2, mm").inputValue()).toBe("24.0158 in");
    const [printed] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Print the sheet" }).click(),
    ]);
    expect(printed.suggestedFilename()).toBe("dunlin-hatch-rear-left-matched.pdf");
    await page.getByLabel("± shared by all heights, twice the standard deviation, mm").fill("5");
    await page.waitForURL(/pm=2%7C0\.06%7C0\.06%7C1%7C5%7C0/);
    await page.getByLabel("Name of the copy").fill("One hatch as it was read");
    await page.getByRole("button", { name: "Take the points over into a copy" }).click();
    await page.getByRole("link", { name: "Open One hatch as it was read" }).click();
    await page.getByRole("heading", { name: "One hatch as it was read" }).first().waitFor();
    expect(await page.getByText(/trailing arm, .*matched/).count()).toBeGreaterThan(0);
    await page.goto(
      `${new URL(page.url()).origin}/families/dunlin-hatch/match?corner=rear-left&read=640|-1|0.1;640|-1|0.1;610|-2|0.2`,
    );
    await page.getByText("camber or toe at 3 heights or more").waitFor();
  });

  it("turns the corner and moves its wheel by keyboard, and says what the address names in vain", async () => {
    const page = await openAtDesk("/families/ouzel-saloon/travel?corner=rear-left&beside=nobody&rise_mm=abc");
    await page.getByText("nobody is not on this corner or not on the list").waitFor();
    // What is no number in an address is as if it were not there.
    expect(await page.getByLabel("Travel", { exact: true }).inputValue()).toBe("0");
    const drawing = page.getByRole("img", { name: "The corner from behind, from its side, from above, and in space" });
    const before = await drawing.innerHTML();
    await page.getByLabel("Walk round it").focus();
    await page.keyboard.press("ArrowRight");
    await page.waitForURL(/turn_deg=40/);
    const turned = await drawing.innerHTML();
    expect(turned).not.toBe(before);
    await page.getByLabel("Travel", { exact: true }).focus();
    await page.keyboard.press("End");
    await page.waitForURL(/rise_mm=88/);
    await settle(page);
    expect(await drawing.innerHTML()).not.toBe(turned);
    await page.getByLabel("Torn").selectOption("rear-left/trailing-link/inner-bush");
    const torn = page.getByRole("table", { name: "torn: trailing link, front bush", exact: true });
    await torn.getByRole("columnheader", { name: "+88 mm" }).waitFor();
    expect(await page.getByText(/^No link locks within 200 mm of ride height; its stops end the travel/).count()).toBe(
      1,
    );
    // The same place under the same condition on the sheets beside this one.
    const way = (name: string) => page.locator(".margin").getByRole("link", { name, exact: true }).getAttribute("href");
    expect(await way("Geometry")).toMatch(/geometry\?at=rear-left\/trailing-link\/inner-bush&as=torn-3&rise_mm=88&/);
    expect(await way("How to hold it")).toContain("hold?corner=rear-left&at=rear-left/trailing-link/inner-bush");
    await page.getByLabel("Firmer", { exact: true }).selectOption("rear-left/trailing-link/inner-bush");
    await page.getByLabel("Lowered").selectOption("20");
    await page.getByLabel("Beside").selectOption("");
    await expect.poll(() => page.getByLabel("Beside").isDisabled()).toBe(true);
    expect(await page.getByLabel("Beside").locator("option:checked").textContent()).toBe("four lines already");
    await page.getByRole("heading", { level: 1 }).focus();
    await page.keyboard.press("?");
    expect(await page.getByRole("dialog").textContent()).toContain("the front right corner");
    await page.keyboard.press("Escape");
    await page.keyboard.press("1");
    await page.waitForURL(/corner=front-right/);
    expect(page.url()).not.toContain("torn=");
  });

  it("draws and moves a layout from a file, and says every mistake of one that cannot be used", async () => {
    const page = await openAtDesk("/layouts");
    const text = readFileSync(
      new URL("../../docs/examples/layouts/rear-integral-link-rubber.json", import.meta.url),
      "utf8",
    );
    const parsed = parseBodiesFile(text);
    if ("findings" in parsed) throw new Error(JSON.stringify(parsed.findings));
    const answer = computeBodies({
      file: parsed.value,
      fault: { kind: "torn", place: { part: "integral-link", end: "from" } },
      condition: { contactRise: 0, rack: 0, braking: 2000, lateral: 0, drive: 0 },
    });
    if ("findings" in answer) throw new Error(JSON.stringify(answer.findings));
    await page.getByLabel("Place", { exact: true }).selectOption("integral-link.from");
    await page.getByText(answer.sheet.sentence, { exact: true }).waitFor();
    await settle(page);
    const drawing = page.getByRole("img", { name: "The suspension in space" });
    const before = await drawing.innerHTML();
    await page.getByLabel("Travel", { exact: true }).focus();
    await page.keyboard.press("End");
    await page.waitForURL(/rise_mm=80/);
    await settle(page);
    expect(await drawing.innerHTML()).not.toBe(before);
    await page.getByLabel("Place", { exact: true }).selectOption("arm-ball");
    await page.waitForURL(/at=arm-ball/);
    expect(await page.getByLabel("As", { exact: true }).inputValue()).toBe("loose");
    await page.getByLabel("Play, side to side").fill("1.5");
    await page.keyboard.press("Enter");
    await page.waitForURL(/play_mm=1.5/);
    await page.locator("p", { hasText: "with 1.5 mm of play in the outer joint of the arm" }).waitFor();
    await page.getByLabel("Show", { exact: true }).selectOption("hold");
    await page.locator("p", { hasText: "is pressed together most, by" }).waitFor();
    await page.getByRole("button", { name: /^Arm, outer joint, hanging/ }).click();
    await page.waitForURL(/held=hanging/);
    await page.getByText(/Hands at 3 and 9: the tyre's edge moves/).waitFor();
    const [printed] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Print the sheet" }).click(),
    ]);
    expect(printed.suggestedFilename()).toBe("lower-carrier-arm-with-integral-link-rear-loose.pdf");
    await page.goBack();
    await page.goBack();
    await page.locator("p", { hasText: "with 1.5 mm of play in the outer joint of the arm" }).waitFor();
    await page.getByLabel("Place", { exact: true }).selectOption("arm-front");
    await page.getByLabel("As", { exact: true }).selectOption("firmer");
    await page.getByText("By its hardness", { exact: true }).click();
    await page.getByRole("rowheader", { name: "Hardness of the old part" }).waitFor();
    for (const [label, value, key] of [
      ["Old part", "55", "old_shore_a=55"],
      ["New part", "75", "new_shore_a=75"],
    ] as const) {
      await page.getByLabel(label, { exact: true }).fill(value);
      await page.keyboard.press("Enter");
      await page.waitForURL(new RegExp(key));
    }
    const harder = page.locator("p", { hasText: "with the front bush of the arm firmer, 55 to 75 Shore A" });
    await harder.waitFor();
    await page.reload();
    await harder.waitFor();
    expect(await page.getByLabel("New part", { exact: true }).inputValue()).toBe("75");
    await page.goBack();
    await page.getByRole("rowheader", { name: "Hardness of the new part" }).waitFor();
    expect(await page.getByLabel("Old part", { exact: true }).inputValue()).toBe("55");
    const file = (content: string) => ({
      name: "mine.json",
      mimeType: "application/json",
      buffer: Buffer.from(content),
    });
    const named = text.replace("Lower carrier arm with integral link, rear", "My own rear axle");
    await page.getByLabel("Read a layout in").setInputFiles(file(named));
    await page.getByRole("heading", { name: "My own rear axle" }).waitFor();
    await page.reload();
    await page.getByRole("heading", { name: "My own rear axle" }).waitFor();
    await page
      .getByLabel("Read a layout in")
      .setInputFiles(file(named.replace('"spring_n_per_mm": 70', '"spring_n_per_mm": 0').replace('"ball"', '"bal"')));
    await page.getByRole("heading", { name: "This file cannot be used" }).waitFor();
    const said = await page.locator(".margin").textContent();
    expect(said).toContain("spring_n_per_mm");
    expect(said).toContain("layout.joints[2].kind");
    await page.getByLabel("Read a layout in").setInputFiles(file("no layout at all"));
    await page.getByText("It is not JSON").waitFor();
    const { layout } = JSON.parse(named) as { layout: { readonly points: readonly unknown[] } };
    const spare = { name: "spare", at_mm: [-2700, 600, 300] };
    await page
      .getByLabel("Read a layout in")
      .setInputFiles(file(JSON.stringify({ ...layout, points: [...layout.points, spare] })));
    await page.getByText(/"spare": Nothing uses this point/).waitFor();
    await page.locator("p", { hasText: /^The wheel turns/ }).waitFor();
    await page.getByRole("button", { name: "The invented example" }).click();
    await page.getByRole("heading", { name: "Lower carrier arm with integral link, rear" }).waitFor();
  });
});
