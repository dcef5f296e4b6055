import { type Condition, formatNumber } from "#casework";
import { mmFromMetres } from "#quantity";
import type { Axle } from "../car.ts";

const within = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));

/**
 * A condition as this axle can have it: no rack where it is not steered, no drive where it is not driven, travel no
 * further than its stops.
 */
export const conditionOnAxle = (axle: Axle, condition: Condition): Condition => ({
  ...condition,
  contactRise: within(condition.contactRise, -axle.droopStop, axle.bumpStop),
  rack: axle.rackTravel === undefined ? 0 : within(condition.rack, -axle.rackTravel, axle.rackTravel),
  drive: axle.driven ? condition.drive : 0,
});

const signed = (metres: number): string => `${metres > 0 ? "+" : ""}${formatNumber(mmFromMetres(metres), 0)} mm`;

/** Where body and rack of a condition stand, in words: "at ride height, wheels straight ahead". */
export const stanceWords = ({ contactRise, rack }: Condition): string =>
  [
    contactRise === 0 ? "at ride height" : `${signed(contactRise)} of travel`,
    rack === 0 ? "wheels straight ahead" : `rack ${signed(rack)}`,
  ].join(", ");
