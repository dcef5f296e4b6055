import { expect, test } from "vitest";
import { checkOdometer, checkReading } from "#contract";
import { fieldWords, placeWords, plainHint } from "./plain-words.ts";

test("what only a sending program needs is left out of the hints of readings", () => {
  const [finding] = checkReading({ kind: "reading", quantity: "ride-height", value: 3.79, u: 0.001, point: null });
  expect(finding?.hint).toContain("confirmed");
  expect(plainHint(finding?.hint ?? "")).toBe("Typed with the point one place off it is 379 mm.");
});

test("a replaced odometer is said on the page, not set by its key", () => {
  const [finding] = checkOdometer(
    { visit: "b", date: "2031-05-14", odometerKm: 12 },
    [{ visit: "a", date: "2030-05-14", odometerKm: 100_000 }],
    0,
    false,
  );
  expect(plainHint(finding?.hint ?? "")).toMatch(/say so below; the new one lacks at least 99988 km/);
  expect(plainHint(finding?.hint ?? "")).not.toContain("_");
});

test("fields and places are said in words", () => {
  expect(fieldWords("document.odometer_km")).toBe("odometer");
  expect(fieldWords("document.visits[1].odometer_km")).toBe("odometer, number 2");
  expect(fieldWords("looks[0].content")).toBe("the record");
  expect(placeWords("front-left/disc/thickness")).toBe("front left, disc, thickness");
  expect(plainHint("Save the car first; GET /api/cars lists them.")).toBe("Save the car first; Today lists them.");
});
