import type { Page } from "playwright-core";

/** Says how firm a part is by the hardness of the old one and of the new, Shore A, as it is typed. */
export const enterHardness = async (page: Page, from: string, to: string): Promise<void> => {
  await page.getByRole("button", { name: "By its hardness" }).click();
  for (const [field, hardness] of [
    ["Old part", from],
    ["New part", to],
  ] as const) {
    await page.getByLabel(field).fill(hardness);
    await page.getByLabel(field).press("Enter");
  }
};
