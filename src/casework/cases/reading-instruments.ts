import { budgetReading, findInstrument, type Instrument, instruments, ofResolution } from "#engines/metrology";
import type { QuantityName } from "#vehicle";
import { quantityForms } from "./standard-readings.ts";

/** What a quantity is usually read with in a workshop (common practice, no source); null: by eye, hand or count. */
const usualInstruments: Readonly<Record<QuantityName, string | null>> = {
  play: "dial-gauge-joint",
  "lost-travel": "pry-bar",
  "crack-depth": null,
  "sleeve-offset": "slide-gauge",
  thickness: "micrometer",
  "thickness-variation": "micrometer",
  "run-out": "dial-gauge",
  "pad-thickness": "slide-gauge",
  tread: "tread-gauge",
  pressure: "tyre-gauge",
  "ride-height": "tape",
  camber: "angle-gauge",
  toe: "alignment-stand",
  caster: "alignment-stand",
  "boiling-point": "boiling-tester",
  "slide-force": "spring-balance",
  "drag-torque": "torque-wrench",
  "leak-grade": null,
  rebounds: null,
  gap: "slide-gauge",
  "free-height": "tape",
};

const unitOf = (quantity: QuantityName): Instrument["unit"] | null => {
  switch (quantityForms[quantity].unit) {
    case "mm":
      return "m";
    case "°":
      return "rad";
    case "bar":
      return "Pa";
    case "°C":
      return "K";
    case "N":
      return "N";
    case "N·m":
      return "N m";
    default:
      return null;
  }
};

/** Key of the instrument a quantity is usually read with; null: by eye, hand or count. */
export const usualInstrument = (quantity: QuantityName): string | null => usualInstruments[quantity];

/** Instruments that can show a quantity, by the unit they show, in the order of the table. */
export const instrumentsFor = (quantity: QuantityName): readonly Instrument[] => {
  const unit = unitOf(quantity);
  return instruments.filter((instrument) => instrument.unit === unit);
};

/**
 * Standard uncertainty of a reading, SI, as its instrument shows it; without one (an eye, a hand, a count) the last digit
 * that is written counts twice (invented).
 */
export const computeReadingUncertainty = (quantity: QuantityName, instrument: string | null, value: number): number => {
  const tool = instrument === null ? null : findInstrument(instrument);
  if (tool !== null) return budgetReading(tool, value).u;
  const { decimals, factor } = quantityForms[quantity];
  return ofResolution((2 * 10 ** -decimals) / factor);
};
