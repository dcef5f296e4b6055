import { expect, test } from "vitest";
import { checkOdometer, checkReading } from "#contract";
import { plainHint } from "./asked-again.tsx";

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
