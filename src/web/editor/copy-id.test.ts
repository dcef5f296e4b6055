import { expect, test } from "vitest";
import { copyId } from "./copy-id.ts";

test.each([
  ["Ouzel saloon, our copy", [], "ouzel-saloon-our-copy"],
  ["Ouzel", ["ouzel"], "ouzel-2"],
  ["Ouzel", ["ouzel", "ouzel-2"], "ouzel-3"],
  ["Crème, 5 doors!", [], "creme-5-doors"],
  ["  ", [], null],
] as const)("%j beside %j is kept as %j", (name, taken, id) => {
  expect(copyId(name, taken)).toBe(id);
});

test("a long name keeps within what an id may have", () => {
  const id = copyId("x".repeat(200), ["x".repeat(60)]);
  expect(id).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
  expect(id?.length).toBeLessThanOrEqual(60);
});
