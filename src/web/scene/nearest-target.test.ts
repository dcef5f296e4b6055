import { expect, test } from "vitest";
import { nearestTarget } from "./nearest-target.ts";

const at = (id: string, x: number, y: number) => ({ id, name: id, x, y, width: 48, height: 48 });
const MIDDLE = at("middle", 200, 200);
const PLACES = [MIDDLE, at("right", 300, 210), at("far right", 500, 200), at("above", 190, 100), at("aside", 330, 20)];

test.each([
  ["ArrowRight", "right"],
  ["ArrowUp", "above"],
  ["ArrowLeft", undefined],
  // Hardly lower at all, yet the only one: no place may be out of reach.
  ["ArrowDown", "right"],
] as const)("%s leads to %s", (direction, id) => {
  expect(
    nearestTarget(
      PLACES.filter((place) => place.id !== "above" || direction === "ArrowUp"),
      MIDDLE,
      direction,
    )?.id,
  ).toBe(id);
});

test("a place well aside loses against one ahead, though it is nearer", () => {
  const places = [MIDDLE, at("ahead", 420, 200), at("well aside", 260, 380)];
  expect(nearestTarget(places, MIDDLE, "ArrowRight")?.id).toBe("ahead");
});
