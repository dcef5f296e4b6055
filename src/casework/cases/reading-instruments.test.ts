import { expect, test } from "vitest";
import type { QuantityName } from "#vehicle";
import { computeReadingUncertainty, instrumentsFor, usualInstrument } from "./reading-instruments.ts";
import { quantityForms, standardReadings } from "./standard-readings.ts";

test("every standard reading has a usual instrument that shows its unit", () => {
  for (const { quantity } of standardReadings()) {
    expect(instrumentsFor(quantity).map(({ key }) => key)).toContain(usualInstrument(quantity));
  }
});

test("only what can take a reading is offered for it, each known and in the unit of the quantity", () => {
  expect(instrumentsFor("tread").map(({ key }) => key)).toEqual(["tread-gauge", "slide-gauge"]);
  expect(instrumentsFor("pressure").map(({ key }) => key)).toEqual(["tyre-gauge"]);
  expect(instrumentsFor("rebounds")).toEqual([]);
  const unit = { mm: "m", "°": "rad", bar: "Pa", "°C": "K", N: "N", N·m: "N m", "": "" };
  for (const [quantity, form] of Object.entries(quantityForms) as [
    QuantityName,
    (typeof quantityForms)[QuantityName],
  ][])
    for (const tool of instrumentsFor(quantity))
      expect(tool.unit, `${quantity} by ${tool.key}`).toBe(unit[form.unit as keyof typeof unit]);
});

test("a tape of 1 mm that repeats to 2 mm is known to 1.04 mm", () => {
  const u = computeReadingUncertainty("ride-height", "tape", 0.38);
  expect(1000 * u).toBeCloseTo(Math.hypot(0.5 / Math.sqrt(3), 1), 9);
});

test("a count by eye is known to about half of one", () => {
  expect(computeReadingUncertainty("rebounds", null, 3)).toBeCloseTo(1 / Math.sqrt(3), 9);
});
