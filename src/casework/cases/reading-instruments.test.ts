import { expect, test } from "vitest";
import { computeReadingUncertainty, instrumentsFor, usualInstrument } from "./reading-instruments.ts";
import { standardReadings } from "./standard-readings.ts";

test("every standard reading has a usual instrument that shows its unit", () => {
  for (const { quantity } of standardReadings()) {
    expect(instrumentsFor(quantity).map(({ key }) => key)).toContain(usualInstrument(quantity));
  }
});

test("a tape of 1 mm that repeats to 2 mm is known to 1.04 mm", () => {
  const u = computeReadingUncertainty("ride-height", "tape", 0.38);
  expect(1000 * u).toBeCloseTo(Math.hypot(0.5 / Math.sqrt(3), 1), 9);
});

test("a count by eye is known to about half of one", () => {
  expect(computeReadingUncertainty("rebounds", null, 3)).toBeCloseTo(1 / Math.sqrt(3), 9);
});
