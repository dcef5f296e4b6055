import { expect, test } from "vitest";
import { distinctName, isTaken } from "./distinct-name.ts";

test("a name nobody has stays as it is", () => {
  expect(distinctName("Wagtail van", ["Wagtail bus"])).toBe("Wagtail van");
});

test("a name somebody has gets the first number that is free", () => {
  expect(distinctName("wagtail van", ["Wagtail van"])).toBe("wagtail van 2");
  expect(distinctName("Wagtail van", ["Wagtail van", "Wagtail van 2"])).toBe("Wagtail van 3");
  expect(distinctName("Wagtail van 2", ["Wagtail van 2"])).toBe("Wagtail van 3");
  expect(isTaken("WAGTAIL VAN", ["Wagtail van"])).toBe(true);
});
