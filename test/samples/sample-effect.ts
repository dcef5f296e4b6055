import type { FaultEffect, Figure, WheelPose } from "#casework";
import { radiansFromDegrees } from "#quantity";
import { sampleFamily } from "./sample-family.ts";

/** An invented answer for galleries and tests of drawings: the shape of a real one, the numbers made up. */
const poseAt = (toe: number, rise = 0): WheelPose => {
  const [x, y, z] = sampleFamily.rear.wheel.centre;
  return {
    toe: radiansFromDegrees(toe),
    camber: sampleFamily.rear.wheel.camber,
    spin: 0,
    centre: [x, y, z + rise],
    contact: [x, y, 0],
    rotation: [1, 0, 0, 0, 1, 0, 0, 0, 1],
  };
};

const figure = (key: string, label: string, value: number, more: Partial<Figure> = {}): Figure => ({
  key,
  label,
  value,
  unit: "deg",
  u: 0.05,
  range: null,
  band: [value - 0.1, value + 0.1],
  rung: "measured",
  inputs: [],
  relation: "made up",
  source: "invented",
  signSure: true,
  settle: null,
  ...more,
});

const rises = [-0.08, -0.04, 0, 0.04, 0.08];
const line = (state: "sound" | "torn", values: readonly number[]) => ({
  state,
  values,
  low: values.map((value) => value - 0.1),
  high: values.map((value) => value + 0.1),
});
const headline = figure("toe-change", "Toe, faulty less sound", 0.22, {
  range: [0.13, 0.33],
  band: [0.07, 0.52],
});

/** Poses of the wheel at two other travels. */
export const sampleGhosts: readonly WheelPose[] = [poseAt(0.1, 0.06), poseAt(0.1, -0.06)];

export const sampleEffect: FaultEffect = {
  question: {
    corner: "rear-left",
    position: "rear-left/trailing-link/inner-bush",
    fault: { kind: "torn", grade: 3 },
    condition: { contactRise: 0, rack: 0, braking: 2000, lateral: 0, drive: 0 },
  },
  axle: "rear",
  rung: "measured",
  invented: true,
  parts: [
    {
      kind: "point",
      label: "Trailing link, inner end",
      value: "x −2292, y 577, z 279 mm",
      known: "standard deviation 1, 1, 1 mm; invented",
    },
    {
      kind: "rate",
      label: "Trailing link, inner joint",
      value: "across 1800 N/mm, along 400 N/mm; axis 0.00, 1.00, 0.00",
      known: "standard deviation 15 %; invented",
    },
  ],
  sound: poseAt(0.19),
  faulty: poseAt(0.41),
  inWords: "torn",
  firmness: null,
  tornShare: { low: 0.18, high: 0.35, origin: "invented" },
  rises,
  curves: [
    {
      quantity: "toe",
      unit: "deg",
      drawable: true,
      settle: null,
      lines: [line("sound", [-0.05, 0.1, 0.19, 0.24, 0.28]), line("torn", [0.45, 0.44, 0.41, 0.35, 0.31])],
    },
    {
      quantity: "camber",
      unit: "deg",
      drawable: true,
      settle: null,
      lines: [line("sound", [-0.2, -0.6, -1.2, -2.1, -3.4]), line("torn", [-0.22, -0.62, -1.21, -2.1, -3.4])],
    },
    {
      quantity: "toe-change",
      unit: "deg",
      drawable: true,
      settle: null,
      lines: [line("torn", [0.5, 0.34, 0.22, 0.11, 0.03])],
    },
  ],
  headline,
  figures: [
    headline,
    figure("toe-faulty", "Toe, torn", 0.41),
    figure("toe-sound", "Toe, sound", 0.19),
    figure("camber-change", "Camber, faulty less sound", -0.01, {
      signSure: false,
      settle: "both joint heights to 1 mm",
    }),
  ],
  sentence: "Under 2.0 kN of braking the torn bush lets the rear left wheel turn in 0.22° further.",
  judgedAgainst: "No limit is published. Judged against a sound bush.",
  howSure: "Torn means 18 to 35 % of the sound rate.",
  narrows: null,
  whatElse: "The thrust line turns 0.11°.",
  computedSo: "Five links with rubber in the joints.",
  beyondTyre: null,
  others: [],
  travels: [],
  cautions: ["The maker's figures for this very car come first."],
};

/** Writes a figure as the tests expect it: two decimals and a degree sign. */
export const sampleFormat = ({ value }: Figure): string => `${value < 0 ? "−" : ""}${Math.abs(value).toFixed(2)}°`;
