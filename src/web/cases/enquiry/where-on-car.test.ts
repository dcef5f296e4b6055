import { expect, test } from "vitest";
import { cornersOf, toggleCorner, whereOf, whereWords } from "./where-on-car.ts";

test("a set of wheels and what it has in common are one thing", () => {
  for (const corners of [["front-left"], ["front-left", "front-right"], ["front-left", "rear-left"]] as const) {
    expect(cornersOf(whereOf(corners))).toEqual(corners);
  }
});

test("a wheel tapped twice says nothing again", () => {
  const once = toggleCorner({ side: "unknown", axle: "unknown" }, "rear-right");
  expect(whereWords(once)).toBe("rear right");
  expect(whereWords(toggleCorner(once, "rear-right"))).toBe("");
});
