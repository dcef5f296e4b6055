import { degreesFromRadians, mmFromMetres, radiansFromDegrees } from "#quantity";
import { type Family, STANDARD_GRAVITY } from "#vehicle";
import type { CarMotion } from "../car.ts";

interface Form {
  readonly kind: CarMotion["kind"];
  readonly name: string;
  readonly unit: "mm" | "°" | "g";
  /** As a page shows an amount in SI. */
  readonly show: (si: number) => number;
  readonly read: (shown: number) => number;
  /** How far it is followed each way, as shown; 0 where this car line has no such motion. */
  readonly most: (family: Family) => number;
  readonly step: number;
  readonly axis: "heave, mm" | "roll, °" | "pitch, °" | "rack, mm" | "sideways, g";
  readonly low: string;
  readonly high: string;
}

/** A road car leans and nods less than this (from memory), degrees. */
const MOST_ROLL = 4;
const MOST_PITCH = 2;
const MOST_HEAVE_MM = 60;
/** What a road tyre takes sideways and in braking on dry road, and a strong car in driving (from memory), g. */
const MOST_SIDEWAYS = 0.8;
const MOST_BRAKING = 0.8;
const MOST_DRIVE = 0.5;
const gsOf = (acceleration: number): number => acceleration / STANDARD_GRAVITY;
const accelerationOf = (gs: number): number => gs * STANDARD_GRAVITY;
const thousandth = (mm: number): number => mm / 1000;

/** Every motion, in the order it is offered. */
export const carMotions: readonly Form[] = [
  {
    kind: "roll",
    name: "lean of the body",
    unit: "°",
    show: degreesFromRadians,
    read: radiansFromDegrees,
    most: () => MOST_ROLL,
    step: 0.5,
    axis: "roll, °",
    low: "leans to the left",
    high: "leans to the right",
  },
  {
    kind: "heave",
    name: "body up and down",
    unit: "mm",
    show: mmFromMetres,
    read: thousandth,
    most: ({ front, rear }) =>
      Math.floor(Math.min(MOST_HEAVE_MM, ...[front, rear].flatMap((a) => [1000 * a.bumpStop, 1000 * a.droopStop]))),
    step: 5,
    axis: "heave, mm",
    low: "down",
    high: "up",
  },
  {
    kind: "pitch",
    name: "nod of the body",
    unit: "°",
    show: degreesFromRadians,
    read: radiansFromDegrees,
    most: () => MOST_PITCH,
    step: 0.25,
    axis: "pitch, °",
    low: "nose up",
    high: "nose down",
  },
  {
    kind: "rack",
    name: "rack",
    unit: "mm",
    show: mmFromMetres,
    read: thousandth,
    most: ({ front }) => Math.floor(1000 * (front.rackTravel ?? 0)),
    step: 5,
    axis: "rack, mm",
    low: "rack right",
    high: "rack left",
  },
  {
    kind: "bend",
    name: "bend, brake and drive",
    unit: "g",
    show: gsOf,
    read: accelerationOf,
    most: () => MOST_SIDEWAYS,
    step: 0.05,
    axis: "sideways, g",
    low: "bend to the right",
    high: "bend to the left",
  },
];

/** Along the car beside a bend, as shares of gravity: most braking and most drive, and the step of a slider. */
export const alongForm = {
  brake: MOST_BRAKING,
  drive: MOST_DRIVE,
  step: 0.05,
  show: gsOf,
  read: accelerationOf,
} as const;

/** The form of a motion. */
export function carMotionForm(kind: CarMotion["kind"]): Form {
  const form = carMotions.find((one) => one.kind === kind);
  if (!form) throw new Error(`no motion ${kind}`);
  return form;
}
