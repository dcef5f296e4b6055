import { budgetReading, findInstrument, type Instrument, ofResolution } from "#engines/metrology";
import type { QuantityName } from "#vehicle";
import { quantityForms } from "./standard-readings.ts";

/**
 * What can take a reading of a quantity in a workshop, the usual one first (common practice, no source); none: an eye, a
 * hand or a count.
 */
const takers: Readonly<Record<QuantityName, readonly string[]>> = {
  play: ["dial-gauge-joint", "slide-gauge", "pry-bar"],
  "lost-travel": ["pry-bar", "slide-gauge", "tape"],
  "crack-depth": [],
  "sleeve-offset": ["slide-gauge", "tape"],
  thickness: ["micrometer", "slide-gauge"],
  "thickness-variation": ["micrometer", "dial-gauge"],
  "run-out": ["dial-gauge"],
  "pad-thickness": ["slide-gauge", "tape"],
  tread: ["tread-gauge", "slide-gauge"],
  pressure: ["tyre-gauge"],
  "ride-height": ["tape"],
  camber: ["angle-gauge", "alignment-stand"],
  toe: ["alignment-stand"],
  caster: ["alignment-stand", "angle-gauge"],
  "boiling-point": ["boiling-tester"],
  "slide-force": ["spring-balance"],
  "drag-torque": ["torque-wrench"],
  "leak-grade": [],
  rebounds: [],
  gap: ["slide-gauge", "tape"],
  "free-height": ["tape"],
};

/** Key of the instrument a quantity is usually read with; null: by eye, hand or count. */
export const usualInstrument = (quantity: QuantityName): string | null => takers[quantity][0] ?? null;

/** Instruments that can take a reading of a quantity, the usual one first. */
export const instrumentsFor = (quantity: QuantityName): readonly Instrument[] =>
  takers[quantity].flatMap((key) => findInstrument(key) ?? []);

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
