import type { Limit } from "../family-work.ts";

const practice = { axle: null, loadState: null, owner: "practice", source: "common practice, no source" } as const;
const memory = { axle: null, loadState: null, owner: "memory", source: "from memory" } as const;
const mm = (value: number): number => value / 1000;

/** Working figures where nobody's limit is on file; they raise a finding to plan at most. Disc thickness stands on the disc and is not here. */
export const usualLimits: readonly Limit[] = [
  { ...practice, place: "tyre/tread", quantity: "tread", lower: mm(3), upper: null, grade: 2 },
  { ...practice, place: "pads/thickness", quantity: "pad-thickness", lower: mm(3), upper: null, grade: 2 },
  { ...memory, place: "disc", quantity: "thickness-variation", lower: null, upper: mm(0.015), grade: 2 },
  { ...memory, place: "disc", quantity: "run-out", lower: null, upper: mm(0.07), grade: 2 },
  { ...memory, place: "brakes/fluid", quantity: "boiling-point", lower: 165, upper: null, grade: 2 },
];
