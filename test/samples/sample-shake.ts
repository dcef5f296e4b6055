import type { Figure, Shake } from "#casework";
import { metresPerSecondFromKmPerHour } from "#quantity";

const headline: Figure = {
  key: "shake-ratio",
  label: "Shake along the road, fluid gone over sound, at the worst speed",
  value: 4,
  unit: "times",
  u: 0.6,
  range: null,
  band: [3, 5.4],
  rung: "measured",
  inputs: [],
  relation: "leaked over sound",
  source: "invented",
  signSure: true,
  settle: null,
};

const kmh = Array.from({ length: 17 }, (_, i) => 40 + 10 * i);
const hump = (at: number, wide: number) => (v: number) => 0.0002 + 0.0018 * Math.exp(-(((v - at) / wide) ** 2));
const line = (state: "sound" | "leaked", value: (v: number) => number) => ({
  state,
  values: kmh.map(value),
  low: kmh.map((v) => 0.6 * value(v)),
  high: kmh.map((v) => 1.7 * value(v)),
});

const level = (values: readonly number[]) => ({
  values,
  low: values.map((value) => 0.8 * value),
  high: values.map((value) => 1.2 * value),
});

/** An invented shake: worst at 120 km/h without the fluid, at 200 with it. */
export const sampleShake: Shake = {
  question: { corner: "front-left", position: "front-left/tension-link/inner-bush" },
  axle: "front",
  rung: "measured",
  invented: true,
  parts: [],
  speeds: kmh.map(metresPerSecondFromKmPerHour),
  lines: [line("sound", hump(200, 30)), line("leaked", hump(120, 18))],
  bush: {
    frequencies: [1, 20, 50],
    lines: [
      { state: "sound", stiffness: level([400_000, 700_000, 800_000]), lossAngle: level([0.1, 0.5, 0.2]) },
      { state: "leaked", stiffness: level([390_000, 390_000, 390_000]), lossAngle: level([0.08, 0.08, 0.08]) },
    ],
    worst: 18,
  },
  worst: { speed: metresPerSecondFromKmPerHour(120), atEnd: false },
  felt: null,
  headline,
  figures: [headline],
  sentence: "Under light braking at about 120 km/h the wheel shakes 4 times as far.",
  hidden: "It looks sound.",
  bushAlone: "On a shaker the sound one resists more.",
  judgedAgainst: "No limit is published.",
  howSure: "Invented.",
  whatElse: "Nothing.",
  computedSo: "By hand.",
  cautions: [],
};
