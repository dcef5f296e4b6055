import { describe, expect, it } from "vitest";
import { openPage } from "../browser-setup/fresh-page.ts";
import { desk, tablet } from "../browser-setup/launch.ts";
import { allStored } from "./entries.ts";
import { openSheet, settle } from "./open-sheet.ts";
import { ask, putCarAndVisit, putLooks, putNew } from "./recorded-visit.ts";

const height = { kind: "reading", quantity: "ride-height", value_mm: 382, u_mm: 1 };
const FIELD = "Rear left, height, mm";

interface StoredReading {
  readonly place: string;
  readonly content: Readonly<Record<string, unknown>>;
}

const readingsOf = async (car: string, place: string): Promise<readonly StoredReading["content"][]> =>
  ((await ask(`/api/cars/${car}`)) as { readonly looks: readonly StoredReading[] }).looks
    .filter((look) => look.place === place)
    .map(({ content }) => content);

describe("readings of a visit", () => {
  it("say as found before the work and as left after it; the same figure measured again is a reading of its own", async () => {
    const visit = "readings-again";
    await putCarAndVisit(visit, "ouzel-saloon");
    await putLooks(visit, visit, 61, [{ place: "rear-left/ride-height", content: height, load_state: "standing" }]);
    const page = await openPage(desk);
    await openSheet(page, `/cases/${visit}/readings`);
    await page.getByText("As found. What is typed now tells how the car came.").waitFor();
    const field = page.getByLabel(FIELD, { exact: true });
    expect(await field.inputValue()).toBe("382");

    await putNew("job-card", visit, {
      steps: [{ step: "press-trailing-bush@rear-left", done_by: "MK", at: "2026-03-12T12:00:00Z" }],
    });
    await page.reload();
    await settle(page);
    await page.getByText(/^As left\./).waitFor();
    expect(await field.inputValue()).toBe("");
    expect(await field.evaluate((element) => element.parentElement?.textContent)).toBe("found 382");
    await field.fill("382");
    await field.blur();
    await allStored(page);
    expect(await field.inputValue()).toBe("382");
    expect(await readingsOf(visit, "rear-left/ride-height")).toMatchObject([{ value_mm: 382 }, { value_mm: 382 }]);
    await openSheet(page, `/cases/${visit}/hand-over`);
    const row = page.locator(".as-left tr", { hasText: "Rear left, height" });
    expect(await row.locator("td").allTextContents()).toEqual(["382 mmbeyond", "382 mmbeyond", "0 mm"]);
  });

  it("are typed as people write them, and stand in their fields with a minus", async () => {
    const visit = "readings-as-written";
    await putCarAndVisit(visit, "ouzel-saloon");
    const page = await openPage(desk);
    await openSheet(page, `/cases/${visit}/readings`);
    for (const [name, typed, shown] of [
      ["Front left, pressure, bar", "32 psi", "2.2"],
      ["Front left, camber, °", "-0.12", "−0.12"],
      ["Front right, camber, °", "0°07'", "0.12"],
      ["Front left, disc, point 1, mm", "0.95 in", "24.13"],
    ] as const) {
      const field = page.getByLabel(name, { exact: true });
      await field.fill(typed);
      await field.blur();
      await allStored(page);
      expect(await field.inputValue(), typed).toBe(shown);
    }
    const [pressure] = await readingsOf(visit, "front-left/tyre/pressure");
    expect(pressure?.value_bar).toBeCloseTo(2.206, 3);
    // The same figure with the other sign for a minus is no second reading.
    const camber = page.getByLabel("Front left, camber, °", { exact: true });
    await camber.fill("-0.12");
    await camber.blur();
    await settle(page);
    expect(await camber.inputValue()).toBe("−0.12");
    // Heights want the word on settled wheels: who leaves without it is asked on the page they come to.
    await page.getByRole("button", { name: "rolled and bounced" }).click();
    await page.getByLabel(FIELD, { exact: true }).fill("382");
    await page.getByRole("link", { name: /^Underside/ }).click();
    await page.getByText(/nobody has said whether the car had been rolled/).waitFor();
    await page.getByRole("button", { name: "rolled and bounced" }).click();
    await settle(page);
    expect(await page.getByText(/nobody has said whether the car had been rolled/).count()).toBe(0);
    await allStored(page);
    await allStored(page);
    expect(await readingsOf(visit, "front-left/alignment")).toHaveLength(1);
  });

  it("that are none stand in their field after a reload, and say what was needed", async () => {
    const visit = "readings-refused";
    await putCarAndVisit(visit, "ouzel-saloon");
    const page = await openPage(desk);
    await openSheet(page, `/cases/${visit}/readings`);
    const field = page.getByLabel(FIELD, { exact: true });
    await field.fill("high");
    await field.blur();
    await page.getByText("give a number, in mm").waitFor();
    await page.reload();
    await settle(page);
    expect(await field.inputValue()).toBe("high");
    await page.getByText("give a number, in mm").waitFor();
    await field.fill("382");
    await field.blur();
    await allStored(page);
    await page.reload();
    await settle(page);
    expect(await field.inputValue()).toBe("382");
  });

  it("the field worked on stays in view when the number pad comes up over it", async () => {
    const visit = "readings-pad";
    await putCarAndVisit(visit, "ouzel-saloon");
    const page = await openPage(tablet);
    await openSheet(page, `/cases/${visit}/readings`);
    await page.locator(".reading-input").last().waitFor();
    const drawing = page.locator("#drawing");
    const low = await drawing.evaluate((element) => element.getBoundingClientRect().bottom);
    const names = await page
      .locator(".reading-input")
      .evaluateAll(
        (fields, edge) =>
          fields
            .filter((field) => field.getBoundingClientRect().bottom < edge)
            .map((field) => field.getAttribute("aria-label")),
        low,
      );
    const field = page.getByLabel(names.at(-1) ?? "", { exact: true });
    await field.tap();
    await page.getByRole("button", { name: "Record, next" }).waitFor();
    await settle(page);
    const box = await field.boundingBox();
    const room = await drawing.boundingBox();
    if (box === null || room === null) throw new Error("the field or the drawing is not there");
    expect(box.y + box.height).toBeLessThan(low - 200);
    expect(box.y + box.height).toBeLessThanOrEqual(room.y + room.height);
  });

  it("a speed that was refused stands in its field after a reload, with its complaint open", async () => {
    const visit = "speed-refused";
    await putCarAndVisit(visit, "ouzel-saloon");
    await putNew("enquiry", visit, {
      words: "pulls to the left when braking",
      symptoms: [
        {
          symptom: "pulls-under-braking",
          side: "unknown",
          axle: "unknown",
          conditions: { speed_kph: null, temperature: null, load: null, steering: null, braking: null },
          since: null,
        },
      ],
      use: null,
    });
    const page = await openPage(desk);
    await openSheet(page, `/cases/${visit}/enquiry`);
    await page.locator(".symptom-name").click();
    const speed = page.getByLabel("Speed", { exact: true });
    await speed.fill("quite fast");
    await speed.blur();
    await page.reload();
    await settle(page);
    expect(await speed.inputValue()).toBe("quite fast");
    await page.getByText(/Speed: “quite fast” came; needed is one speed/).waitFor();
    await speed.fill("55 mph");
    await speed.blur();
    await allStored(page);
    await expect.poll(() => speed.inputValue()).toBe("88.5");
  });
});
