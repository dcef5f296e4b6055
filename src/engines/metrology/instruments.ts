import { type Budget, type Component, combineComponents, ofExpanded, ofResolution } from "./budget.ts";

/** An instrument and what it can honestly show in a workshop; SI. */
export interface Instrument {
  readonly key: string;
  readonly label: string;
  readonly unit: "m" | "rad" | "N" | "K" | "N m" | "Pa";
  /** Step of its display. */
  readonly resolution: number;
  /** Plus or minus (95 %) on repeating the reading: an amount, or a share of the reading. */
  readonly repeatability: { readonly amount: number } | { readonly share: number };
  /** Shows differences only: never held against a limit. */
  readonly comparesOnly: boolean;
  /** Where the two figures come from. */
  readonly origin: "memory";
}

const mm = 1e-3;
const degree = Math.PI / 180;
const minute = degree / 60;
const bar = 1e5;

const instrument = (
  key: string,
  label: string,
  unit: Instrument["unit"],
  resolution: number,
  repeatability: Instrument["repeatability"],
  comparesOnly = false,
): Instrument => ({ key, label, unit, resolution, repeatability, comparesOnly, origin: "memory" });

/** Typical figures, from memory; where a range is usual the worse end stands. A workshop puts its own in their place. */
export const instruments: readonly Instrument[] = [
  instrument("dial-gauge", "Dial gauge on a disc", "m", 0.01 * mm, { amount: 0.02 * mm }),
  instrument("dial-gauge-joint", "Dial gauge on a joint, with a bar", "m", 0.01 * mm, { amount: 0.1 * mm }),
  instrument("micrometer", "Outside micrometer, pointed anvil", "m", 0.01 * mm, { amount: 0.005 * mm }),
  instrument("slide-gauge", "Slide gauge", "m", 0.05 * mm, { amount: 0.1 * mm }),
  instrument("tread-gauge", "Tread depth gauge", "m", 0.1 * mm, { amount: 0.2 * mm }),
  instrument("tape", "Tape, hub centre to arch, settled", "m", 1 * mm, { amount: 2 * mm }),
  instrument("toe-bars", "Toe bars or strings", "m", 0.5 * mm, { amount: 1 * mm }),
  instrument("pry-bar", "Bar and paint mark, by eye", "m", 0.3 * mm, { amount: 0.5 * mm }),
  instrument("angle-gauge", "Digital angle gauge", "rad", 0.1 * degree, { amount: 0.2 * degree }),
  instrument("alignment-stand", "Alignment stand, clamped on afresh", "rad", 1 * minute, { amount: 5 * minute }),
  instrument("spring-balance", "Spring balance", "N", 1, { share: 0.05 }),
  instrument("roller-tester", "Roller brake tester", "N", 50, { share: 0.05 }),
  instrument("infrared-thermometer", "Infrared thermometer on bright iron", "K", 1, { amount: 60 }, true),
  instrument("boiling-tester", "Fluid boiling tester", "K", 1, { amount: 5 }),
  instrument("torque-wrench", "Torque wrench", "N m", 1, { share: 0.04 }),
  instrument("tyre-gauge", "Tyre pressure gauge", "Pa", 0.05 * bar, { amount: 0.1 * bar }),
];

/** The instrument with this key, or null. */
export const findInstrument = (key: string): Instrument | null => instruments.find((i) => i.key === key) ?? null;

/**
 * Budget of one reading: the display's step, the repeatability, and whatever else is known of it, in squares.
 * `value` is the reading itself, in the instrument's unit.
 */
export function budgetReading(tool: Instrument, value: number, others: readonly Component[] = []): Budget {
  const { repeatability } = tool;
  const plusMinus = "amount" in repeatability ? repeatability.amount : repeatability.share * Math.abs(value);
  return combineComponents([
    { name: "resolution", u: ofResolution(tool.resolution) },
    { name: "repeatability", u: ofExpanded(plusMinus) },
    ...others,
  ]);
}
