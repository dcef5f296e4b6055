import { describe, expect, inject, it } from "vitest";
import { openPage } from "../browser-setup/fresh-page.ts";
import { desk } from "../browser-setup/launch.ts";

describe("the program in a real browser", () => {
  it("opens, says its name and complains of nothing", async () => {
    const page = await openPage(desk);
    const complaints: string[] = [];
    page.on("pageerror", (problem) => complaints.push(problem.message));
    page.on("console", (message) => {
      if (message.type() === "error" || message.type() === "warning") complaints.push(message.text());
    });
    await page.goto(inject("address"), { waitUntil: "networkidle" });
    expect(await page.title()).toContain("Underbench");
    expect((await page.locator("body").textContent())?.trim()).not.toBe("");
    expect(complaints).toEqual([]);
  });
});
