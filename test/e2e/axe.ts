import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { AxeResults } from "axe-core";
import type { Page } from "playwright-core";

const source = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** What axe finds on a page, each with the first elements it means; empty where nothing is. */
export const findByAxe = async (page: Page): Promise<readonly string[]> => {
  await page.evaluate(source);
  const { violations } = await page.evaluate<AxeResults>("axe.run(document, { resultTypes: ['violations'] })");
  return violations.map(({ id, help, nodes }) => {
    const where = nodes.slice(0, 3).map(({ target }) => target.join(" "));
    return `${id}: ${help}: ${where.join(" | ")}`;
  });
};
